// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/notebook/typed_figures.h"

namespace wm::notebook {

/// How one invented mechanic keeps the notebook.
struct Habit {
    char separator = ';';
    char decimal = ',';
    std::string newline = "\n";
    std::string encoding = "utf-8";  ///< utf-8, marked, utf-16le, utf-16be, windows-1252
    std::string dates = "d.m.y";     ///< d.m.y, d/m/y, m/d/y, y-m-d, serial, y-m-d time, d month y
    std::string hours = "number";    ///< number, clock, minutes, unit
    std::string language = "en";     ///< en, de, fr, it, es, none
    bool blankColumn = false;
    bool strangeColumn = false;
    bool newestFirst = false;
    bool totalAtTheEnd = false;
    bool otherCase = false;
    bool machineOnce = false;  ///< the machine stands on the first line of the day only
    bool commasInNotes = false;
    bool dateLast = false;
};

/// A line as it was meant.
struct Meant {
    std::string machine{};
    calendar::Date date{};
    std::int64_t hours = 0;  ///< hundredths
    std::optional<std::int64_t> meter{};
    std::string defect{};  ///< what was done to it, or empty
};

struct MadeNotebook {
    std::string bytes{};
    std::vector<Meant> lines{};          ///< in the order of the file
    std::vector<std::size_t> numbers{};  ///< their line numbers
};

/// The season of two machines in this habit, with defects of every kind that the habit allows planted far
/// apart.
MadeNotebook makeNotebook(const Habit& habit, std::uint32_t seed);

/// At least twenty habits, each of its own.
std::vector<Habit> habits();

}  // namespace wm::notebook
