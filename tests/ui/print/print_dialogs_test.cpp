// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/print_dialogs.h"

#include <gtest/gtest.h>

#include <QFileInfo>
#include <QLineEdit>
#include <QPrintDialog>
#include <QPrinter>

#include "tests/ui/print/sample_sheet.h"

namespace wm::ui {
namespace {

TEST(PrintDialogsTest, SetsThePrinterForOneSideOfTheRightPaper) {
    sheet::JobSheet sheet = sampleSheet();
    sheet.number = 0;
    const auto printer = sheetPrinter(sheet, PaperSize::Letter);
    EXPECT_EQ(printer->docName(), QStringLiteral("Job sheet (proof), Heron 250"));
    EXPECT_EQ(printer->pageLayout().pageSize().id(), QPageSize::Letter);
    EXPECT_EQ(printer->pageLayout().orientation(), QPageLayout::Portrait);
    EXPECT_EQ(printer->duplex(), QPrinter::DuplexNone);
}

TEST(PrintDialogsTest, AFileToPrintIntoHasANameAndItsEnding) {
    const auto printer = sheetPrinter(sampleSheet(), PaperSize::A4);
    QPrintDialog dialog(printer.get());
    suggestFile(dialog, QStringLiteral("Heron 250 2026-05-07 sheet 4"));
    auto* field = dialog.findChild<QLineEdit*>(QStringLiteral("filename"));
    ASSERT_NE(field, nullptr);
    EXPECT_EQ(QFileInfo(field->text()).fileName(), QStringLiteral("Heron 250 2026-05-07 sheet 4.pdf"));
    field->setText(QStringLiteral("/tmp/mine"));
    emit field->editingFinished();
    EXPECT_EQ(field->text(), QStringLiteral("/tmp/mine.pdf"));
}

}  // namespace
}  // namespace wm::ui
