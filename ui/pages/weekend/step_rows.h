// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/book/step_effect.h"
#include "ui/pages/weekend/step_fields.h"
#include "ui/tables/table_model.h"

namespace wm::ui {

enum StepColumn { StepName, StepMachine, StepMinutes };
std::vector<QString> stepHeaders();

/// New steps that were begun, then those in use by name, then those that are switched off. What was begun and
/// not saved says so.
std::vector<TableRow> stepRows(const book::Book& book, std::optional<MachineId> machine,
                               const StepDrafts& drafts);

/// The working order to reach what lies under a step and to close again. Columns: what, minutes. What was not
/// there before, or stood elsewhere, is in ink, the rest in pencil, if there is a plan of before.
std::vector<TableRow> stepOrderRows(const book::Book& book, MachineId machine, const weekend::Plan& plan,
                                    const weekend::Plan* before);

/// "4 min off, 7 min on · needed by Rear tyre and 3 more"; "switched off".
QString stepStateWords(const book::Book& book, const weekend::StepVersion& step);

/// What a change does to plans: "To reach what lies under it and close again: 22 → 26 min."
QString effectWords(const book::StepEffect& effect);

/// For a question before the window closes: access step “Rear wheel out”.
QStringList namesOf(const StepDrafts& drafts);

}  // namespace wm::ui
