// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/verbs/verb.h"

namespace wm::verbs {

/// A starter schedule made to fit, all in one go. `percent` scales what use wears (hours, kilometres,
/// outings, starts, washes, mud days; never the calendar) of every task in use that is not confirmed against
/// a manual; a life limit is never stretched, a count never falls under one. A scaled figure says so in its
/// source.
struct Adjustment {
    std::int64_t percent = 100;
    std::vector<TaskId> off{};
    std::vector<TaskId> on{};
    /// On this machine `needs` really must come off before the step, or need not: only of what differs
    /// between models.
    struct Edge {
        StepId step{};
        std::string needs{};
        bool applies = true;
    };
    std::vector<Edge> edges{};
};

/// The limits of a task at `percent`, as the verb would write them: 6 h at 80 % is 4.8 h, 3 washes are 2.
std::vector<upkeep::Limit> scaledLimits(const upkeep::TaskVersion& task, std::int64_t percent);

/// The verb. NotPositive or TooLarge (over 500) "percent"; Unknown, Inconsistent (an edge that is the same on
/// all models), Duplicate (said twice) at "off[0].task", "edges[0].needs" ...; NothingToDo if it stays as it
/// is.
base::Result<picture::Change> adjustSchedule(const VerbContext& context, MachineId machine,
                                             const Adjustment& adjustment);

}  // namespace wm::verbs
