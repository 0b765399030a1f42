// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/names.h"
#include "core/book/book.h"
#include "core/calendar/date.h"

namespace wm::explain {

/// What a step of a derivation says.
enum class StepKind : std::uint8_t {
    Task,           ///< the root: how much is left, of the limit that decides
    Version,        ///< what the task says, since when and by what source
    Weight,         ///< what an hour counts on a ground at a pace
    Item,           ///< what sits in the task's position, known since
    Record,         ///< where it counts from: the job was done
    Baseline,       ///< ... it was done before the file knew it
    NeverDone,      ///< ... it is as old as what it is on, by somebody's word
    KnownStart,     ///< ... the life is known from its first day
    NoRecord,       ///< ... nobody knows
    NothingFitted,  ///< its position is empty: what sat there, and since when it is out
    Limit,          ///< what is left of one limit: amount - what is behind it
    Amount,         ///< the interval, or the way to the next fixed mark
    Mark,           ///< that mark
    StoodAt,        ///< where the last completion stood on the scale of marks (as less)
    Behind,         ///< since that: the sum of what follows
    Past,           ///< what was before the file, or the rest of it
    Told,           ///< what somebody said that lay between, up to a day
    Carried,        ///< with one machine, from when to when
    Place,          ///< where in the machine: in which items
    Outings,        ///< a group of outings
    Outing,         ///< one of them
    Gaps,           ///< a group of unlogged stretches
    Gap,            ///< what the meter ran and nobody noted
    SharedGap,      ///< what several parts of one unlogged stretch would count twice
    Washes,
    Wash,
    Crashes,
    Crash,
    MudDays,
    MudDay,
    Happened,   ///< what made it due whatever the limits say; `to`: before a race of that day
    Value,      ///< a measured value that made it due
    OtherJobs,  ///< completions of the task whose every n-th one asks for this
    Extra,      ///< what every n-th completion brings as well: with the how manieth from now
    Unmetered,  ///< a stretch of which the meter says nothing, as a reading can't follow the one before
    Jump        ///< a stretch of which the meter says more than its days can hold
};

/// How the figures of a step's children make its own.
enum class Makes : std::uint8_t {
    Nothing,     ///< they say where it comes from and have no part in it
    Sum,         ///< children with a figure add up to it
    RoundedSum,  ///< the same, of weighted hours, then rounded to whole hundredths
    Difference,  ///< the first one less the second, from the side that the task is reckoned from
    One          ///< it is that of the child that governs
};

/// One step of where a figure comes from. Plain values: words are made of them elsewhere.
struct Step {
    StepKind kind = StepKind::Task;
    std::string name{};    ///< of a task, item, machine, source ...
    std::string detail{};  ///< a path, a page, the items it sat in, what a past rests on
    std::optional<calendar::Date> from{};
    std::optional<calendar::Date> to{};
    std::optional<upkeep::Counter> counter{};  ///< what the figure counts; nothing: completions
    std::optional<upkeep::CountBracket> figure{};
    bool fine = false;  ///< the figure is in thousandths of the counter's unit: weighted, not yet rounded
    std::optional<upkeep::CountBracket> raw{};  ///< hours as ridden, where the figure is weighted
    std::int64_t permille = 1000;
    std::int64_t count = 0;  ///< facts in a group
    std::optional<usage::Known> known{};
    std::int64_t fact = 0;  ///< id of the one fact that it is, or 0
    bool governs = false;   ///< the limit that decides; of a version: confirmed against the manual
    std::optional<upkeep::Limit> limit{};        ///< of an amount: what the task says
    bool isFirst = false;                        ///< ... and that it is the first interval
    std::optional<units::Decimal> value{};       ///< of a measured value, its unit in `detail`
    std::optional<units::Decimal> valueLimit{};  ///< ... and the limit that it reaches
    upkeep::From side = upkeep::From::Best;
    upkeep::Reached reached = upkeep::Reached::No;  ///< of a limit, and of the task: whether it is met
    Makes makes = Makes::Nothing;
    std::vector<Step> children{};
};

/// Where the standing of a task on the book's day comes from. The figure of the root is what is left of the
/// limit that governs (none without a limit that anybody can reckon with).
Step why(const book::Book& book, const book::DueLine& line);

}  // namespace wm::explain

namespace wm::base {
template <>
struct Names<explain::StepKind> {
    static constexpr std::array<std::string_view, 36> names{
        "task",       "wording",     "weight",     "item",           "record",    "baseline",
        "never done", "known start", "no record",  "nothing fitted", "limit",     "amount",
        "mark",       "stood at",    "behind",     "past",           "told",      "carried",
        "place",      "outings",     "outing",     "gaps",           "gap",       "shared gap",
        "washes",     "wash",        "crashes",    "crash",          "mud days",  "mud day",
        "happened",   "value",       "other jobs", "extra",          "unmetered", "jump"};
};
template <>
struct Names<explain::Makes> {
    static constexpr std::array<std::string_view, 5> names{"nothing", "sum", "rounded sum", "difference",
                                                           "one"};
};
template <>
struct Names<usage::Known> {
    static constexpr std::array<std::string_view, 8> names{"noted",     "assumed",  "metered", "scaled down",
                                                           "scaled up", "unlogged", "at most", "past"};
};
}  // namespace wm::base
