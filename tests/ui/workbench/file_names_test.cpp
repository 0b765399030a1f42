// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/workbench/file_names.h"

#include <gtest/gtest.h>

namespace wm::ui {
namespace {

TEST(FileNames, GetTheirEndingOnce) {
    EXPECT_EQ(withEnding("/a.b/sheet", ".pdf"), "/a.b/sheet.pdf");
    EXPECT_EQ(withEnding("/a/sheet.pdf", ".pdf"), "/a/sheet.pdf");
    EXPECT_EQ(withEnding("/a/sheet 2.5", ".pdf"), "/a/sheet 2.5.pdf");
    EXPECT_EQ(endingOf("PDF (*.pdf)"), "pdf");
    EXPECT_EQ(endingOf("Notebook (*.csv *.tsv *.txt);;Any file (*)"), "csv");
    EXPECT_EQ(endingOf("Any file (*)"), "");
}

TEST(FileNames, HoldNothingThatASystemRefuses) {
    EXPECT_EQ(asFileName("Heron 250 2026-05-07 sheet 4"), "Heron 250 2026-05-07 sheet 4");
    EXPECT_EQ(asFileName("../Heron/2:\n\"race\"?"), "Heron-2- -race--");
    EXPECT_EQ(asFileName("-rf"), "rf");
}

}  // namespace
}  // namespace wm::ui
