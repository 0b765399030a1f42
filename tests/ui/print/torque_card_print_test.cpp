// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/torque_card_layout.h"

#include <gtest/gtest.h>

#include <QTemporaryDir>

#include "ui/print/paged_output.h"
#include "ui/print/sheet_type.h"

namespace wm::ui {
namespace {

sheet::TorqueCard cardOf(int lines) {
    sheet::TorqueCard card{
        .machine = "Heron 250", .model = "Fenwright Heron 250 R, 2024", .date = "7 May 2026"};
    card.groups.push_back({"Wheels and axles", {}});
    card.groups.push_back({"Engine", {}});
    for (int at = 0; at < lines; ++at)
        card.groups[at % 2 == 0 ? 0 : 1].lines.push_back({.joint = "Joint " + std::to_string(at),
                                                          .thread = "M8x1.25",
                                                          .torque = "110 N·m",
                                                          .confirmed = at != 3,
                                                          .how = std::string(at == 1 ? 400 : 20, 'w')});
    return card;
}

QSizeF a4() {
    return *printableMm(PaperSize::A4, kPaperMarginMm) * kPointsPerMm;
}

TEST(TorqueCardLayoutTest, KeepsEveryMarkOnItsPageAndEveryJointOnce) {
    const auto pages = layOutTorqueCard(cardOf(41), a4());
    ASSERT_TRUE(pages);
    EXPECT_GE(pages->size(), 3U);
    std::map<QString, int> seen;
    for (const SheetPage& page : *pages)
        for (const Mark& mark : page.marks) {
            const QRectF bounds = boundsOf(mark);
            EXPECT_GE(bounds.left(), -1);
            EXPECT_LE(bounds.right(), a4().width() + 1);
            EXPECT_LE(bounds.bottom(), a4().height() + 1);
            if (const auto* text = std::get_if<TextMark>(&mark))
                ++seen[text->text];
        }
    for (int at = 0; at < 41; ++at)
        EXPECT_EQ(seen[QStringLiteral("Joint %1").arg(at)], 1) << at;
    EXPECT_EQ(seen[QStringLiteral("110 N·m")], 41);
    EXPECT_EQ(seen[QStringLiteral("page 1 of %1").arg(pages->size())], 1);
}

TEST(TorqueCardLayoutTest, TheFootnoteStandsWhereTheWedgeDoes) {
    const auto pages = layOutTorqueCard(cardOf(41), a4());
    ASSERT_TRUE(pages);
    std::size_t wedged = 0;
    for (const SheetPage& page : *pages) {
        const auto wedges = std::count_if(page.marks.begin(), page.marks.end(), [](const Mark& mark) {
            return std::holds_alternative<WedgeMark>(mark);
        });
        const bool noted = std::any_of(page.marks.begin(), page.marks.end(), [](const Mark& mark) {
            const auto* text = std::get_if<TextMark>(&mark);
            return text != nullptr && text->text.startsWith(QStringLiteral("not confirmed"));
        });
        EXPECT_EQ(noted, wedges > 0);
        EXPECT_TRUE(wedges == 0 || wedges == 2) << "at the figure, and at the footnote";
        wedged += wedges > 0 ? 1 : 0;
    }
    EXPECT_EQ(wedged, 1U);
}

TEST(TorqueCardLayoutTest, IsWrittenAsAPdf) {
    QTemporaryDir folder;
    const auto card = cardOf(5);
    const auto layOut = [&](QSizeF area) { return layOutTorqueCard(card, area); };
    const QString path = folder.filePath(QStringLiteral("card.pdf"));
    const PdfResult result = writePagesPdf(layOut, torqueCardTitle(card), path, PaperSize::Letter);
    EXPECT_TRUE(result.isWritten());
    EXPECT_EQ(result.pages, 1);
    EXPECT_FALSE(layOutTorqueCard(card, QSizeF(100, 100)));
    EXPECT_EQ(
        writePagesPdf(layOut, {}, folder.filePath(QStringLiteral("no/card.pdf")), PaperSize::A4).outcome,
        PdfOutcome::FolderMissing);
}

}  // namespace
}  // namespace wm::ui
