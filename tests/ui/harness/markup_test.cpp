// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The user's words stay words: a garage whose every text is markup, on every surface of the window.
#include <gtest/gtest.h>

#include <QApplication>

#include "tests/ui/harness/findings.h"
#include "tests/ui/own_words.h"
#include "ui/theme/theme.h"

namespace wm::ui {
namespace {

const std::string kBeforeEachText = "<img src=nowhere.png><b>&amp;";

TEST(Markup, StaysWordsOnEverySurface) {
    applyTheme(*qApp, ThemeChoice::Light);
    Findings all;
    std::size_t surfaces = 0;
    seeEverything({.size = {1280, 720},
                   .retold =
                       [](std::vector<picture::Row>& rows) {
                           eachOwnText(rows, [](std::string& words) {
                               if (!words.empty())
                                   words = kBeforeEachText + words;
                           });
                       }},
                  [&](const Surface& surface) {
                      ++surfaces;
                      all.merge(markup(surface, QString::fromStdString(kBeforeEachText)));
                  });
    EXPECT_GT(surfaces, 60U);
    for (const auto& [finding, seen] : all)
        ADD_FAILURE() << finding.surface.toStdString() << ": " << finding.where.toStdString() << ": "
                      << seen.toStdString();
}

}  // namespace
}  // namespace wm::ui
