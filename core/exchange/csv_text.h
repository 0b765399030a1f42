// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/cells.h"
#include "core/base/result.h"

namespace wm::exchange {

using CsvRow = base::CellLine;

struct CsvTable {
    std::vector<std::string> columns{};
    std::vector<CsvRow> rows{};
};

/// Cells between commas, quoted where they hold a comma, a quote (doubled) or a line break (RFC 4180). Lines
/// that begin with '#' and empty lines are left out; the first one that remains names the columns.
/// Errors: NotText, Empty (no columns), Malformed with "line 12" (an open quote, text after one, a row of
/// another length), Duplicate (a column).
base::Result<CsvTable> readCsv(std::string_view text);

}  // namespace wm::exchange
