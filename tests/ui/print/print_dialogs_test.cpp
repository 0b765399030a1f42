// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/print_dialogs.h"

#include <gtest/gtest.h>

#include <QPrintPreviewDialog>
#include <QPrintPreviewWidget>
#include <QPrinter>

#include "tests/ui/print/sample_sheet.h"

namespace wm::ui {
namespace {

TEST(PrintDialogsTest, PreviewsEveryPageUnderTheNameOfTheSheet) {
    const sheet::JobSheet sheet = sampleSheet();
    const auto printer = sheetPrinter(sheet, PaperSize::A4);
    const auto dialog = sheetPreview(sheet, *printer, nullptr);
    EXPECT_EQ(dialog->windowTitle(), QStringLiteral("Job sheet 14, Heron 250"));
    dialog->show();
    auto* preview = dialog->findChild<QPrintPreviewWidget*>();
    ASSERT_NE(preview, nullptr);
    preview->updatePreview();
    EXPECT_EQ(preview->pageCount(), sheetPageCount(sheet, PaperSize::A4));
}

TEST(PrintDialogsTest, SetsThePrinterForOneSideOfTheRightPaper) {
    sheet::JobSheet sheet = sampleSheet();
    sheet.number = 0;
    const auto printer = sheetPrinter(sheet, PaperSize::Letter);
    EXPECT_EQ(printer->docName(), QStringLiteral("Job sheet (proof), Heron 250"));
    EXPECT_EQ(printer->pageLayout().pageSize().id(), QPageSize::Letter);
    EXPECT_EQ(printer->pageLayout().orientation(), QPageLayout::Portrait);
    EXPECT_EQ(printer->duplex(), QPrinter::DuplexNone);
}

}  // namespace
}  // namespace wm::ui
