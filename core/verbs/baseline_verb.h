// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/verbs/verb.h"

namespace wm::verbs {

/// What is known of a task that nobody has recorded here. NewOn: it was as new on that day, before riding.
enum class BaselineAnswer : std::uint8_t { NewOn, Serviced, LookedFine };

struct BaselineLine {
    TaskId task{};
    BaselineAnswer answer = BaselineAnswer::NewOn;
    /// Left out: for NewOn the day of firstRidden; for Serviced the day on which the meter showed `meter`, or
    /// that of the reading before if it counts the van too; for LookedFine today.
    std::optional<calendar::Date> date{};
    std::optional<units::Hours> meter{};  ///< Serviced: what the hour meter showed then
};

/// From when on the item in a task's position, or without one the machine, can have been ridden: its first
/// day, or its first fitting if it lay on the shelf before.
calendar::Moment firstRidden(const book::Book& book, const items::Machine& machine,
                             std::optional<ItemId> item);

/// The verb: the answers for many tasks of one machine in one go; each error names its line:
/// "lines[3].date". NothingToDo (no lines), Duplicate "task" (answered twice), Inconsistent "answer" (looked
/// fine, of a task that renews: looking begins no count), Empty "date" (serviced, without day and meter, or
/// with a meter alone where the task counts the calendar or other things than hours), TooLarge "meter" (more
/// than it shows now), Inconsistent "meter" (the machine's meter was never read, or the stated past is
/// less than what it ran since), BeforeItsTime "date"
/// (another item sat in the position then), and those of recordJob.
base::Result<picture::Change> recordBaseline(const VerbContext& context, MachineId machine,
                                             std::vector<BaselineLine> lines);

}  // namespace wm::verbs
