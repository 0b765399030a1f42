// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPalette>
#include <QString>
#include <optional>
#include <vector>

#include "core/book/evening.h"
#include "ui/tables/table_model.h"

namespace wm::ui {

/// What wants doing on a machine (or on all), picked jobs first, then what is due, what was found, and last
/// what can wait. Columns: job, machine, how far, minutes, kit, in. The id of a row is that of its task or
/// snag.
std::vector<TableRow> wantsDoing(const book::Book& book, std::optional<MachineId> machine,
                                 const QPalette& palette);

/// The working order of an evening. Columns: clock, what, minutes. By the id of a row `stepAt` finds the
/// access step that it is about, if there is one.
std::vector<TableRow> workingOrder(const book::Book& book, const book::Evening& evening);
const weekend::StepVersion* stepAt(const book::Book& book, const book::Evening& evening, std::int64_t row);

/// What a line of a working order says.
QString actWords(const book::Book& book, MachineId machine, const weekend::Act& act);

/// "kit ok", "short: fork oil 150 ml", "kit not tied to the shelf".
QString kitWords(const book::KitState& kit);

/// "168 of 180 min", "12 min too long", "168 min, no work window yet".
QString fitWords(const book::Evening& evening);

/// "While you are in there: chain slider 20 min, ..." or nothing.
QString alsoOpenWords(const book::Evening& evening);

}  // namespace wm::ui
