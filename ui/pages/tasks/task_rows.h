// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPalette>
#include <QString>
#include <optional>
#include <vector>

#include "core/ledger/book.h"
#include "ui/tables/table_model.h"

namespace wm::ui {

/// "every 15 h or 10 washes, the first at 5 h"; "after each wash"; "every 2nd ring change".
QString intervalWords(const upkeep::TaskVersion& task);

/// Columns: task, machine, about, interval, if left undone, last, source.
std::vector<TableRow> taskRows(const ledger::Book& book, std::optional<MachineId> machine,
                               const QPalette& palette);

}  // namespace wm::ui
