// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/verbs/verb.h"

namespace wm::verbs {

/// What is known of a task that nobody has recorded here. NewOn: it was as new on that day, before riding.
/// NeverDone: what is on it came with it and was never done, so that all that its subject ever ran is behind
/// it. Serviced: it was done on a day before, written down or remembered.
enum class BaselineAnswer : std::uint8_t { NewOn, NeverDone, Serviced, LookedFine };

/// At least, likely, at most, as somebody remembers it; an end that is left out is one that nobody knows.
struct Remembered {
    std::int64_t low = 0;
    std::optional<std::int64_t> best{};
    std::optional<std::int64_t> high{};
};
/// So many washes (or other pieces) since the job.
struct PiecesSince {
    upkeep::Counter counter = upkeep::Counter::Washes;
    Remembered count{};
};
/// "Between May and November 2024, likely in August."
struct RememberedDay {
    calendar::Date first{};
    std::optional<calendar::Date> likely{};
    calendar::Date last{};
};

struct BaselineLine {
    TaskId task{};
    BaselineAnswer answer = BaselineAnswer::NewOn;
    /// Written down. Left out: for NewOn the day of firstRidden; for Serviced the day on which the meter
    /// showed `meter`, or that of the reading before if it counts the van too; for LookedFine today.
    std::optional<calendar::Date> date{};
    /// Serviced: what the hour meter showed then, written down. With `date` it becomes a reading of that day.
    std::optional<units::Hours> meter{};
    // Serviced: what is remembered. Never a reading.
    std::optional<Remembered> hoursAgo{};   ///< hundredths ridden since
    std::optional<Remembered> meterThen{};  ///< hundredths that the hour meter showed then
    std::optional<RememberedDay> day{};
    std::vector<PiecesSince> since{};  ///< of NeverDone: in all its life
};

/// What is said of all jobs of the machine at once: so many washes since `from`, none being none for each
/// job since. Without a day: since the earliest of the jobs that were said to be done before the file.
struct SinceThen {
    std::vector<PiecesSince> pieces{};
    std::optional<calendar::Date> from{};
};

/// From when on the item in a task's position, or without one the machine, can have been ridden: its first
/// day, or its first fitting if it lay on the shelf before.
calendar::Moment firstRidden(const book::Book& book, const items::Machine& machine,
                             std::optional<ItemId> item);

/// The verb: the answers for many tasks of one machine in one go, and what is said of all its jobs. A task
/// that still counts from such an answer can be answered again: the new one takes its place, the old one is
/// struck. Each error names its line: "lines[3].date". NothingToDo (nothing is said), Duplicate "task"
/// (answered twice), Inconsistent "answer" (looked fine, of a task that renews: looking begins no count),
/// Empty "date" (serviced, without day and figure; with a meter alone where the task counts other things than
/// hours), TooLarge "meter" (more than it shows now), Inconsistent "meter" (the machine's meter was never
/// read, or the whole stated past is less than what it ran since), MeterRunsBack, MeterJumps "meter" (with
/// the day, of all readings), OutOfOrder, Negative (a bracket), Inconsistent "since" (not a piece),
/// BeforeItsTime "date" (another item sat in the position then), and those of recordJob. Of what is said of
/// all: "all[0].count", and Empty "from" (no job is from before the file).
base::Result<picture::Change> recordBaseline(const VerbContext& context, MachineId machine,
                                             const std::vector<BaselineLine>& lines,
                                             const SinceThen& all = {});

}  // namespace wm::verbs
