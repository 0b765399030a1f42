// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The user's words stay words: a garage whose every text is markup, on every surface of the window.
#include <gtest/gtest.h>

#include <QApplication>

#include "tests/ui/harness/findings.h"
#include "ui/theme/theme.h"

namespace wm::ui {
namespace {

const std::string kBeforeEachText = "<img src=nowhere.png><b>&amp;";

// Puts the mark before every text of a row that is a person's own words.
class Marks {
  public:
    template <class T>
    static void fields(T& row) {
        T::fields(row, [](std::string_view name, auto& member) {
            if (name != "code")
                Marks::put(member);
        });
    }

  private:
    static void put(std::string& words) {
        if (!words.empty())
            words = kBeforeEachText + words;
    }
    template <class T>
    static void put(std::vector<T>& children) {
        for (T& child : children)
            Marks::fields(child);
    }
    template <class T>
    static void put(T& /*no text*/) {}
};

TEST(Markup, StaysWordsOnEverySurface) {
    applyTheme(*qApp, ThemeChoice::Light);
    Findings all;
    std::size_t surfaces = 0;
    seeEverything({.size = {1280, 720},
                   .retold =
                       [](std::vector<picture::Row>& rows) {
                           for (picture::Row& row : rows)
                               std::visit([](auto& each) { Marks::fields(each); }, row);
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
