// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "core/calendar/date.h"
#include "core/upkeep/task.h"
#include "core/usage/exposure.h"

namespace wm::upkeep {

/// A task that nobody has recorded, with all that its subject can have behind it.
struct Unknown {
    const TaskVersion* task = nullptr;
    usage::Exposure life{};        ///< of the subject, its stated past included
    calendar::Date oldestSince{};  ///< the earliest day on which the subject can have been new
};

/// How many of its intervals may lie behind a task, by what can be reckoned: hours by the high end of the
/// life (by the best where nobody knows one), the calendar by the oldest age, the rest by what was counted
/// here. Of several limits the most with Combine::First, else the least; 0 without limits.
/// 41 h behind it at most, every 15 h: 2.73.
double intervalsBehind(const Unknown& unknown, calendar::Date on);

/// Which is to be looked at before which: what is both hidden and a matter of safety, other safety, hidden
/// wear, what ends a race, what costs money; within a class what may be the longest overdue; then by name and
/// by id. The answer is an order of `unknowns`.
std::vector<std::size_t> rankUnknown(std::span<const Unknown> unknowns, calendar::Date on);

/// True for a task that looking can settle: it renews nothing and always uses nothing up.
bool isALook(const TaskVersion& task);

/// True for a task that an hour figure alone can place: it counts no calendar, washes or the like.
bool countsOnlyHours(const TaskVersion& task);

}  // namespace wm::upkeep
