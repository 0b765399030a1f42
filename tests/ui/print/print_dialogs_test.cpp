// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/print_dialogs.h"

#include <gtest/gtest.h>

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

}  // namespace
}  // namespace wm::ui
