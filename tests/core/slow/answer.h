// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "tests/core/slow/tale.h"

// What is answered to a question of tests/data/subject, by whoever reckons it.
namespace wm::tale {

/// Hours in hundredths, all else in pieces. No best: nobody said what is likely. No high: open.
struct Behind {
    std::int64_t low = 0;
    std::optional<std::int64_t> best = 0;
    std::optional<std::int64_t> high = 0;
    friend bool operator==(const Behind&, const Behind&) = default;
};

struct Answer {
    std::string subject{};                ///< "item E1", "machine Heron", "empty engine since 2026-06-15"
    std::string countsFrom = "no clock";  ///< a record's name, "new", "nothing" (no record), "no clock"
    std::optional<Behind> behind{};       ///< of the task's first limit
    bool inHours = true;                  ///< what `behind` counts
    std::int64_t completions = 0;
    std::int64_t others = 0;  ///< n-th-of: completions of the other job since its own last one
    bool extra = false;       ///< the next completion is an n-th one
    std::string triggered = "no";
    std::string reached = "no";  ///< the value that makes it due: "clearance 0.08 of m1"
    std::string waits = "no";    ///< the emptied position for which nobody can do it
    bool due = false;            ///< by its limit, its count, a trigger or a value
};

struct Demand {
    std::string what{};
    std::string from{};   ///< the record
    std::string since{};  ///< the record's day, or the day of the refit that brought it anew
    bool due = false;
    friend auto operator<=>(const Demand&, const Demand&) = default;
};

/// Where an answer is not what the question's line says; empty if all that it names holds.
std::vector<std::string> differences(const Json& ask, const Answer& answer);
std::vector<std::string> differences(const Json& ask, std::vector<Demand> demands);
/// Both whole.
std::vector<std::string> differences(const Answer& one, const Answer& other);

std::string text(const Behind& behind, bool inHours);
std::string text(const std::vector<Demand>& demands);

}  // namespace wm::tale
