// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/book/book.h"
#include "ui/tables/table_model.h"

namespace wm::ui {

/// Every value that was measured at a job, newest first. Columns: what, machine, value, limits, day, total
/// time of then, job. A value outside a limit that somebody typed from the manual is named so.
std::vector<TableRow> measurementRows(const book::Book& book, std::optional<MachineId> machine);

}  // namespace wm::ui
