// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/verbs/verb.h"

namespace wm::verbs {

// Events, work windows, the weekend and its sheets.

base::Result<picture::Change> saveEvent(const VerbContext& context, outlook::Event event);
base::Result<picture::Change> saveWindow(const VerbContext& context, weekend::WorkWindow window);
/// How long an engine takes to be cold again after a run. TooLarge over 24 h.
base::Result<picture::Change> setCooling(const VerbContext& context, units::Minutes cool);
base::Result<picture::Change> pick(const VerbContext& context, MachineId machine, std::optional<TaskId> task,
                                   std::optional<SnagId> snag, bool picked);
/// The number that the next sheet gets; one that went out is never given again.
std::int64_t nextSheetNumber(const picture::Ledger& ledger);
base::Result<picture::Change> issueSheet(const VerbContext& context,
                                         weekend::IssuedSheet sheet);  ///< number is given by the verb

}  // namespace wm::verbs
