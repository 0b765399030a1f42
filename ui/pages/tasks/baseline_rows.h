// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <vector>

#include "ui/pages/tasks/baseline_asking.h"
#include "ui/tables/table_model.h"

namespace wm::ui {

/// The row that unfolds the rest; no task has this id.
inline constexpr std::int64_t kFold = 0;

/// A line a question. Columns: task, about, interval, class, what is known, when.
std::vector<TableRow> baselineRows(const book::Book& book, const BaselineAsking& asking);

}  // namespace wm::ui
