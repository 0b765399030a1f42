// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/picture/ledger.h"

namespace wm::exchange {

/// The whole file as JSON text: tables in the order of picture::ForEachRow, rows in order of entry or id,
/// keys in the order of fields(), two blanks of indent, one line break at the end. Struck facts stand in
/// their place. The same ledger always gives the same bytes.
std::string toJson(const picture::Ledger& ledger);

/// Reads what toJson writes. Nothing is guessed: an unknown, missing or doubled key, a wrong type, a missing
/// table is refused. Bounds: whole numbers up to 10^12 on either side of zero, quantities up to 10^9, ids
/// from 1 to 2^63 - 1.
/// Errors: Malformed (field = the place, "outing[3].hours"; rows count from 0), NewerFormat (given and wanted
/// are formats), Empty, NotText (invalid UTF-8, control characters), Duplicate (an id, a key) and the faults
/// of the single values. References between rows are checked by verbs::adoptAll.
base::Result<std::vector<picture::Row>> fromJson(std::string_view text);

}  // namespace wm::exchange
