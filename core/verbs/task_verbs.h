// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/definitions/renewal.h"
#include "core/verbs/verb.h"

namespace wm::verbs {

// The version of tasks and access steps.

/// A new task or a new version; the code of a known task stays. NotPositive, OutOfOrder, Duplicate (code on
/// this machine), Unknown (access step, joint, task, shelf line), WrongUnit, Cycle, Empty (a source, if
/// confirmed).
base::Result<picture::Change> saveTask(const VerbContext& context, upkeep::TaskVersion version);
/// Cycle; Inconsistent "active" if a step is put away that something still needs (`given` what).
base::Result<picture::Change> saveStep(const VerbContext& context, weekend::StepVersion version);
/// Several versions at once, as a starter schedule brings them; `text` for undo.
base::Result<picture::Change> adoptSchedule(const VerbContext& context, MachineId machine, std::string text,
                                            std::vector<weekend::StepVersion> steps,
                                            std::vector<fastening::JointVersion> joints,
                                            std::vector<upkeep::TaskVersion> tasks);
/// Takes over what a starter says now (core/definitions/renewal.h). NothingToDo "group" if the machine has it
/// all; Inconsistent, Unknown and Cycle where it does not fit what the machine has of its own.
base::Result<picture::Change> renewSchedule(const VerbContext& context, MachineId machine,
                                            const definitions::Schedule& starter,
                                            definitions::RenewalGroup group);

}  // namespace wm::verbs
