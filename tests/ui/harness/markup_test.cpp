// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The user's words stay words: a garage whose every text is markup, on every surface of the window.
#include <gtest/gtest.h>

#include <QApplication>
#include <algorithm>
#include <string_view>
#include <variant>

#include "tests/ui/harness/findings.h"
#include "tests/ui/own_words.h"
#include "ui/theme/theme.h"

namespace wm::ui {
namespace {

// Short enough to stand in a short name too.
constexpr std::string_view kBeforeEachText = "<img src=x>&amp;";
static_assert(kBeforeEachText.size() < upkeep::kLongestShortName);

void shortenAgain(picture::Row& row) {
    if (auto* task = std::get_if<upkeep::TaskVersion>(&row))
        task->shortName.resize(std::min(task->shortName.size(), upkeep::kLongestShortName));
}

TEST(Markup, StaysWordsOnEverySurface) {
    applyTheme(*qApp, ThemeChoice::Light);
    Findings all;
    std::size_t surfaces = 0;
    seeEverything(
        {.size = {1280, 720},
         .retold =
             [](std::vector<picture::Row>& rows) {
                 eachOwnText(rows, [](std::string& words) {
                     if (!words.empty())
                         words.insert(0, kBeforeEachText);
                 });
                 std::for_each(rows.begin(), rows.end(), shortenAgain);
             }},
        [&](const Surface& surface) {
            ++surfaces;
            all.merge(markup(surface, QString::fromUtf8(kBeforeEachText.data(), kBeforeEachText.size())));
        });
    EXPECT_GT(surfaces, 60U);
    for (const auto& [finding, seen] : all)
        ADD_FAILURE() << finding.surface.toStdString() << ": " << finding.where.toStdString() << ": "
                      << seen.toStdString();
}

}  // namespace
}  // namespace wm::ui
