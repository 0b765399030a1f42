// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/book/book.h"
#include "ui/tables/table_model.h"

namespace wm::ui {

/// Proofs first (one a machine with something picked; the row's id is the machine's), then what was issued,
/// newest first, void ones too (the row's id is the sheet's). Columns: number, machine, for, jobs, day.
std::vector<TableRow> sheetRows(const book::Book& book, std::optional<MachineId> machine);

/// Nothing if no sheet has this id. A number that went out stays readable when the sheet is void.
const weekend::IssuedSheet* issuedSheet(const book::Book& book, SheetId id);
bool isVoid(const book::Book& book, const weekend::IssuedSheet& sheet);

/// The jobs of an issued sheet, one a line.
QString issuedWords(const book::Book& book, const weekend::IssuedSheet& sheet);

}  // namespace wm::ui
