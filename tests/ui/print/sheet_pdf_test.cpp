// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>
#include <algorithm>

#include "tests/ui/print/pdf_text.h"
#include "tests/ui/print/sample_sheet.h"
#include "ui/print/sheet_painter.h"

namespace wm::ui {
namespace {

class SheetPdfTest : public testing::Test {
  protected:
    [[nodiscard]] QString pathTo(const QString& name) const { return folder_.filePath(name); }

    QString written(const sheet::JobSheet& sheet, PaperSize size = PaperSize::A4) {
        const QString path = pathTo(QStringLiteral("sheet.pdf"));
        const PdfResult result = writeSheetPdf(sheet, path, size);
        EXPECT_EQ(result.outcome, PdfOutcome::Written) << result.detail.toStdString();
        return path;
    }

    static QStringList allLines(const QString& path) {
        QStringList lines;
        for (int page = 1; page <= pdfInfo(path).pages; ++page)
            lines += pdfLines(path, page);
        return lines;
    }

    static bool anyHas(const QStringList& lines, const QString& text) {
        return std::any_of(lines.begin(), lines.end(),
                           [&](const QString& line) { return line.contains(text); });
    }

  private:
    QTemporaryDir folder_;
};

TEST_F(SheetPdfTest, HasThePagesPaperAndTitleThatItSays) {
    for (const PaperSize size : {PaperSize::A4, PaperSize::Letter}) {
        const QString path = pathTo(QStringLiteral("sheet.pdf"));
        const PdfResult result = writeSheetPdf(sampleSheet(), path, size);
        const PdfSeen seen = pdfInfo(path);
        EXPECT_EQ(seen.pages, result.pages);
        EXPECT_EQ(seen.pages, sheetPageCount(sampleSheet(), size));
        EXPECT_GE(seen.pages, 4);
        EXPECT_EQ(seen.title, QStringLiteral("Job sheet 14, Heron 250"));
        const QSizeF paper = paperSizeMm(size) * (72.0 / 25.4);
        EXPECT_NEAR(seen.paper.width(), paper.width(), 0.6);
        EXPECT_NEAR(seen.paper.height(), paper.height(), 0.6);
    }
}

TEST_F(SheetPdfTest, KeepsEachTorqueOnOneLineWithItsUnit) {
    const QStringList lines = allLines(written(sampleSheet()));
    int figures = 0;
    for (const sheet::SheetLine& step : sampleSheet().lines) {
        for (const sheet::TorqueLine& torque : step.torques) {
            const QString figure = QString::fromStdString(torque.figure.text);
            if (figure.isEmpty())
                continue;
            ++figures;
            EXPECT_TRUE(anyHas(lines, figure)) << torque.figure.text;
        }
    }
    EXPECT_EQ(figures, 8);
}

TEST_F(SheetPdfTest, HeadsEveryPageWithSheetMachineConfigurationAndCount) {
    const QString path = written(sampleSheet());
    const int pages = pdfInfo(path).pages;
    for (int page = 1; page <= pages; ++page) {
        const QStringList lines = pdfLines(path, page);
        EXPECT_TRUE(anyHas(lines, QStringLiteral("Job sheet 14"))) << page;
        EXPECT_TRUE(anyHas(lines, QStringLiteral("Heron 250"))) << page;
        EXPECT_TRUE(anyHas(lines, QStringLiteral("rear wheel: mud"))) << page;
        EXPECT_TRUE(anyHas(lines, QStringLiteral("page %1 of %2").arg(page).arg(pages))) << page;
    }
}

TEST_F(SheetPdfTest, PrintsABlankForATorqueThatIsNotKnown) {
    sheet::JobSheet sheet = sampleSheet();
    sheet.lines = {sheet.lines.back()};
    sheet::SheetLine step;
    step.kind = sheet::LineKind::On;
    step.text = "Refit: Front wheel";
    sheet::TorqueLine blank;
    blank.joint = "Front axle nut";
    step.torques = {blank};
    sheet.lines.insert(sheet.lines.begin(), step);
    const QStringList lines = allLines(written(sheet));
    EXPECT_TRUE(anyHas(lines, QStringLiteral("torque")));
    EXPECT_TRUE(anyHas(lines, QStringLiteral("manual p.")));
    EXPECT_FALSE(anyHas(lines, QStringLiteral("not confirmed")));
}

TEST_F(SheetPdfTest, FootnotesAFigureThatIsNotConfirmed) {
    const QStringList lines = allLines(written(sampleSheet()));
    EXPECT_TRUE(anyHas(lines, QStringLiteral("not confirmed against the service manual")));
}

TEST_F(SheetPdfTest, ReadsUserTextAsText) {
    sheet::JobSheet sheet = sampleSheet();
    sheet.machine = "<b>Heron</b> & 'Co' \"%1\"";
    EXPECT_TRUE(anyHas(allLines(written(sheet)), QStringLiteral("<b>Heron</b> & 'Co' \"%1\"")));
}

TEST_F(SheetPdfTest, SaysWhatIsWrongWithAPath) {
    const auto outcome = [](const QString& path) {
        return writeSheetPdf(sampleSheet(), path, PaperSize::A4).outcome;
    };
    EXPECT_EQ(outcome(QString()), PdfOutcome::NoName);
    EXPECT_EQ(outcome(pathTo(QString())), PdfOutcome::IsFolder);
    EXPECT_EQ(outcome(pathTo(QStringLiteral("no/such/folder/sheet.pdf"))), PdfOutcome::FolderMissing);
    QFile file(pathTo(QStringLiteral("plain")));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.close();
    EXPECT_EQ(outcome(pathTo(QStringLiteral("plain/sheet.pdf"))), PdfOutcome::FolderMissing);
    EXPECT_EQ(outcome(QStringLiteral("/proc/sheet.pdf")), PdfOutcome::NotAllowed) << "even for root";
}

TEST_F(SheetPdfTest, LeavesTheOldSheetWhereTheNewOneDoesNotArrive) {
    const PdfResult result =
        writeSheetPdf(sampleSheet(), pathTo(QString(300, QLatin1Char('x'))), PaperSize::A4);
    EXPECT_FALSE(result.isWritten()) << "a name longer than the file system takes";
    EXPECT_FALSE(result.detail.isEmpty());
    EXPECT_TRUE(QDir(pathTo(QString())).isEmpty());
}

TEST_F(SheetPdfTest, NoticesThatTheSpaceRanOutAndLeavesADeviceADevice) {
    const QString full = QStringLiteral("/dev/full");
    if (!QFile::exists(full) || QFileInfo(full).isFile())
        GTEST_SKIP() << "no such device here";
    const PdfResult result = writeSheetPdf(sampleSheet(), full, PaperSize::A4);
    EXPECT_EQ(result.outcome, PdfOutcome::NotWritten);
    EXPECT_FALSE(result.detail.isEmpty());
    EXPECT_FALSE(QFileInfo(full).isFile());
}

}  // namespace
}  // namespace wm::ui
