// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <vector>

#include "core/book/book.h"
#include "ui/tables/table_model.h"

namespace wm::ui {

/// Lines of the shelf. Columns: what, part number, on hand, on order, keep, where.
std::vector<TableRow> shelfRows(const book::Book& book);
/// Containers of one line. Columns: container, left, opened, good until.
std::vector<TableRow> lotRows(const book::Book& book, StockLineId line);
/// What went in and out of one line, newest first, struck moves too. Columns: day, amount, why, for.
std::vector<TableRow> moveRows(const book::Book& book, StockLineId line);

}  // namespace wm::ui
