// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/ledger/book.h"
#include "ui/tables/table_model.h"

namespace wm::ui {

/// "110 N·m", "8 to 10 N·m" as the manual prints it; empty if nobody has typed it yet.
QString torqueWords(const fastening::JointVersion& joint);

/// Joints of a machine, or of all. Columns: joint, machine, torque, thread, condition, source, mark.
std::vector<TableRow> jointRows(const ledger::Book& book, std::optional<MachineId> machine);

/// What else has to be known at this joint: pieces, stages, thread condition, locking, what is renewed,
/// order.
std::vector<QString> jointNotes(const fastening::JointVersion& joint);

/// When and by whom it was last confirmed, loosened, looked at; newest first.
std::vector<TableRow> markRows(const ledger::Book& book, JointId joint);

}  // namespace wm::ui
