// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/sheet_layout.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QImage>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QPainter>
#include <QPdfWriter>
#include <QPrinter>
#include <QTemporaryDir>
#include <algorithm>

#include "tests/repository.h"
#include "tests/ui/print/sample_sheet.h"
#include "ui/print/print_dialogs.h"
#include "ui/print/sheet_painter.h"
#include "ui/print/sheet_type.h"

namespace wm::ui {
namespace {

QSizeF areaOf(PaperSize size) {
    return *printableMm(size, kPaperMarginMm) * kPointsPerMm;
}

std::vector<SheetPage> pagesOf(const sheet::JobSheet& sheet, QSizeF area) {
    return layOutSheet(sheet, area).value_or(std::vector<SheetPage>{});
}

std::vector<const TextMark*> textsOf(const SheetPage& page) {
    std::vector<const TextMark*> texts;
    for (const Mark& mark : page.marks)
        if (const auto* text = std::get_if<TextMark>(&mark))
            texts.push_back(text);
    return texts;
}

void expectNothingClipped(const sheet::JobSheet& sheet, QSizeF area) {
    const QRectF inside = QRectF({0, 0}, area).adjusted(-0.5, -0.5, 0.5, 0.5);
    const auto pages = pagesOf(sheet, area);
    ASSERT_FALSE(pages.empty());
    for (std::size_t page = 0; page < pages.size(); ++page) {
        for (const Mark& mark : pages[page].marks) {
            const QRectF bounds = boundsOf(mark);
            const auto* text = std::get_if<TextMark>(&mark);
            EXPECT_TRUE(inside.contains(bounds))
                << "page " << page + 1 << ": "
                << (text != nullptr ? text->text.toStdString() : "a line or box") << " at " << bounds.left()
                << "," << bounds.top() << " to " << bounds.right() << "," << bounds.bottom();
        }
    }
}

// Texts that lie on each other can't be read. Descent and leading may touch the next line.
void expectNoTextOnText(const sheet::JobSheet& sheet, QSizeF area) {
    for (const SheetPage& page : pagesOf(sheet, area)) {
        const auto texts = textsOf(page);
        for (std::size_t a = 0; a < texts.size(); ++a)
            for (std::size_t b = a + 1; b < texts.size(); ++b) {
                const QRectF shared = texts[a]->rect & texts[b]->rect;
                EXPECT_FALSE(shared.width() > 0.5 && shared.height() > 3.0)
                    << texts[a]->text.toStdString() << " | " << texts[b]->text.toStdString();
            }
    }
}

sheet::JobSheet sheetOfLongTexts() {
    sheet::JobSheet sheet = sampleSheet();
    std::string words;
    for (int word = 0; word < 400; ++word)
        words += "carefully ";
    sheet.machine = words;
    sheet.configuration = words;
    sheet.target = words;
    sheet.jobs.push_back(std::string(600, 'W'));
    for (sheet::SheetLine& line : sheet.lines) {
        line.text += words.substr(0, 190);
        line.howTo = words;
        for (sheet::TorqueLine& torque : line.torques) {
            torque.joint += words.substr(0, 150);
            torque.condition = words.substr(0, 190);
            torque.order = words;
        }
        for (sheet::MeasureLine& measure : line.measures)
            measure.name += words.substr(0, 150);
    }
    sheet.lines[4].torques[0].figure.text = "123456789.123 to 123456789.123 lbf·in";
    for (sheet::PullLine& line : sheet.pull) {
        line.what += words.substr(0, 190);
        line.place += std::string(80, 'M');
    }
    for (sheet::FollowUpLine& line : sheet.followUps)
        line.what += words.substr(0, 190);
    for (sheet::SettingLine& line : sheet.settings)
        line.value += words.substr(0, 190);
    return sheet;
}

TEST(PaperSizeTest, IsThatOfTheStandards) {
    QFile file(QString::fromStdString(test::repositoryPath("tests/reference/paper_sizes.json")));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QJsonArray cases =
        QJsonDocument::fromJson(file.readAll()).object()[QLatin1String("cases")].toArray();
    ASSERT_EQ(cases.size(), 4);
    for (const QJsonValue& value : cases) {
        const QJsonObject row = value.toObject();
        const std::string id = row[QLatin1String("id")].toString().toStdString();
        const auto size =
            row[QLatin1String("size")].toString() == QLatin1String("A4") ? PaperSize::A4 : PaperSize::Letter;
        const auto inside = printableMm(size, row[QLatin1String("margin_mm")].toDouble());
        EXPECT_EQ(inside.has_value(), !row[QLatin1String("must_refuse")].toBool()) << id;
        if (!inside)
            continue;
        EXPECT_NEAR(inside->width(), row[QLatin1String("width_mm")].toDouble(), 1e-9) << id;
        EXPECT_NEAR(inside->height(), row[QLatin1String("height_mm")].toDouble(), 1e-9) << id;
        if (row.contains(QLatin1String("width_pt"))) {
            EXPECT_NEAR(inside->width() * kPointsPerMm, row[QLatin1String("width_pt")].toDouble(), 1e-6)
                << id;
            EXPECT_NEAR(inside->height() * kPointsPerMm, row[QLatin1String("height_pt")].toDouble(), 1e-6)
                << id;
        }
    }
}

TEST(SheetLayoutTest, ClipsNothingOnA4AndLetter) {
    expectNothingClipped(sampleSheet(), areaOf(PaperSize::A4));
    expectNothingClipped(sampleSheet(), areaOf(PaperSize::Letter));
    expectNothingClipped(sampleSheet(), kLeastArea);
}

TEST(LongSheetLayoutTest, ClipsNothingHoweverLongTheTexts) {
    expectNothingClipped(sheetOfLongTexts(), areaOf(PaperSize::A4));
    expectNothingClipped(sheetOfLongTexts(), kLeastArea);
}

TEST(LongSheetLayoutTest, LaysNoTextOnAnother) {
    for (const QSizeF area : {areaOf(PaperSize::A4), areaOf(PaperSize::Letter), kLeastArea}) {
        expectNoTextOnText(sampleSheet(), area);
        expectNoTextOnText(sheetOfLongTexts(), area);
    }
}

// The layout reckons; this looks at what is really painted.
TEST(SheetLayoutTest, PaintsNoInkOutsideThePaper) {
    constexpr int kBorder = 20;
    const QSizeF area = areaOf(PaperSize::A4);
    for (const SheetPage& page : pagesOf(sampleSheet(), area)) {
        QImage image(static_cast<int>(area.width()) + 1 + 2 * kBorder,
                     static_cast<int>(area.height()) + 1 + 2 * kBorder, QImage::Format_Grayscale8);
        image.fill(Qt::white);
        QPainter painter(&image);
        painter.setRenderHint(QPainter::TextAntialiasing);
        painter.translate(kBorder, kBorder);
        paintMarks(painter, page.marks);
        painter.end();
        const QRect inside = image.rect().adjusted(kBorder - 1, kBorder - 1, 1 - kBorder, 1 - kBorder);
        int ink = 0;
        for (int y = 0; y < image.height(); ++y)
            for (int x = 0; x < image.width(); ++x)
                if (!inside.contains(x, y) && image.constScanLine(y)[x] < 250)
                    ++ink;
        EXPECT_EQ(ink, 0);
    }
}

TEST(SheetLayoutTest, SetsTorqueForTheBenchAndBoxesForGloves) {
    std::size_t boxes = 0;
    for (const SheetPage& page : pagesOf(sampleSheet(), areaOf(PaperSize::A4))) {
        for (const TextMark* text : textsOf(page)) {
            EXPECT_GE(text->font.pixelSize(), 10) << text->text.toStdString();
            if (text->text.contains(QLatin1String("N·m")) && text->font.pixelSize() > 16) {
                EXPECT_GE(text->font.pixelSize(), 24);
                EXPECT_LE(text->font.pixelSize(), 28);
            }
        }
        for (const Mark& mark : page.marks)
            if (const auto* box = std::get_if<BoxMark>(&mark); box != nullptr && box->rect.width() > 20) {
                ++boxes;
                EXPECT_GE(box->rect.height(), 9.0 * kPointsPerMm - 1e-9);
            }
    }
    EXPECT_GT(boxes, 30U);
}

TEST(SheetLayoutTest, KeepsAStepWithItsTorquesOnOnePage) {
    const sheet::JobSheet sheet = sampleSheet();
    const auto pages = pagesOf(sheet, areaOf(PaperSize::A4));
    const auto pageOf = [&](const std::string& field) {
        for (std::size_t page = 0; page < pages.size(); ++page)
            for (const TextMark* text : textsOf(pages[page]))
                if (text->text == QString::fromStdString(field))
                    return page;
        ADD_FAILURE() << field << " is not on the paper";
        return pages.size();
    };
    for (const sheet::SheetLine& line : sheet.lines)
        for (const sheet::TorqueLine& torque : line.torques)
            EXPECT_EQ(pageOf(line.field), pageOf(torque.field)) << torque.joint;
}

TEST(SheetLayoutTest, StartsAStageOnItsOwnPageAndEndsItWithAHeavyRule) {
    const auto pages = pagesOf(sampleSheet(), areaOf(PaperSize::A4));
    int stops = 0;
    for (const SheetPage& page : pages) {
        const auto texts = textsOf(page);
        const bool opens = std::any_of(texts.begin(), texts.end(), [](const TextMark* text) {
            return text->text == QLatin1String("Work, stage 2 of 2");
        });
        if (opens) {
            EXPECT_EQ(texts.front()->text, QLatin1String("Work, stage 2 of 2"));
        }
        stops += static_cast<int>(std::count_if(page.marks.begin(), page.marks.end(), [](const Mark& mark) {
            const auto* rule = std::get_if<RuleMark>(&mark);
            return rule != nullptr && rule->heavy;
        }));
    }
    EXPECT_EQ(stops, 2);
}

TEST(SheetLayoutTest, StandsAWedgeAtEachUnconfirmedFigureOnly) {
    sheet::JobSheet sheet = sampleSheet();
    const auto wedges = [](const std::vector<SheetPage>& pages) {
        std::ptrdiff_t count = 0;
        for (const SheetPage& page : pages)
            count += std::count_if(page.marks.begin(), page.marks.end(),
                                   [](const Mark& mark) { return std::holds_alternative<WedgeMark>(mark); });
        return count;
    };
    EXPECT_GT(wedges(pagesOf(sheet, areaOf(PaperSize::A4))), 0);
    for (sheet::SheetLine& line : sheet.lines) {
        for (sheet::TorqueLine& torque : line.torques)
            torque.figure.confirmed = true;
        for (sheet::MeasureLine& measure : line.measures)
            measure.limitConfirmed = true;
        for (sheet::Figure& quantity : line.quantities)
            quantity.confirmed = true;
    }
    EXPECT_EQ(wedges(pagesOf(sheet, areaOf(PaperSize::A4))), 0);
}

TEST(SheetLayoutTest, RefusesPaperOnWhichNobodyCouldWrite) {
    EXPECT_FALSE(layOutSheet(sampleSheet(), {319, 800}).has_value());
    EXPECT_FALSE(layOutSheet(sampleSheet(), {500, 400}).has_value());
}

TEST(SheetPainterTest, PaintsOnAPrinterTheAskedPages) {
    QTemporaryDir folder;
    const auto printer = sheetPrinter(sampleSheet(), PaperSize::Letter);
    printer->setOutputFormat(QPrinter::PdfFormat);
    printer->setOutputFileName(folder.filePath(QStringLiteral("printed.pdf")));
    EXPECT_EQ(paintSheet(sampleSheet(), *printer, {2, 3}), PaintOutcome::Painted);
    EXPECT_EQ(paintSheet(sampleSheet(), *printer, {99, 0}), PaintOutcome::NoSuchPages);
    EXPECT_EQ(paintSheet(sampleSheet(), *printer, {3, 2}), PaintOutcome::NoSuchPages);
    EXPECT_GT(QFile(folder.filePath(QStringLiteral("printed.pdf"))).size(), 1000);
}

TEST(SheetPainterTest, RefusesAPostcard) {
    QTemporaryDir folder;
    QPdfWriter writer(folder.filePath(QStringLiteral("card.pdf")));
    writer.setPageSize(QPageSize(QPageSize::A6));
    EXPECT_EQ(paintSheet(sampleSheet(), writer, {}), PaintOutcome::PaperTooSmall);
}

}  // namespace
}  // namespace wm::ui
