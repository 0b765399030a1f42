// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/csv_text.h"

#include <algorithm>

#include "core/base/text.h"

namespace wm::exchange {

using base::Fault;
using base::refuse;
using base::Result;

namespace {

std::string wantedInstead(base::CellFault fault) {
    switch (fault) {
        case base::CellFault::QuoteWithin:
            return "quotes around the whole cell";
        case base::CellFault::TextAfterQuote:
            return "a comma or the end of the line";
        case base::CellFault::QuoteLeftOpen:
            break;
    }
    return "a closing quote";
}

}  // namespace

Result<CsvTable> readCsv(std::string_view text) {
    if (!base::isUtf8(text))
        return refuse(Fault::NotText, "text");
    CsvTable table;
    base::CellReader reader(text, ',');
    while (!reader.atEnd()) {
        if (reader.skipRemark('#'))
            continue;
        CsvRow row = reader.next();
        if (row.fault)
            return refuse(Fault::Malformed, "line " + std::to_string(row.line), {},
                          wantedInstead(*row.fault));
        if (row.cells.size() == 1 && row.cells.front().empty())
            continue;
        if (table.columns.empty()) {
            table.columns = std::move(row.cells);
            continue;
        }
        if (row.cells.size() != table.columns.size())
            return refuse(Fault::Malformed, "line " + std::to_string(row.line),
                          std::to_string(row.cells.size()) + " cells",
                          std::to_string(table.columns.size()) + " cells");
        table.rows.push_back(std::move(row));
    }
    if (table.columns.empty())
        return refuse(Fault::Empty, "columns");
    for (auto column = table.columns.begin(); column != table.columns.end(); ++column)
        if (std::find(table.columns.begin(), column, *column) != column)
            return refuse(Fault::Duplicate, "columns", *column);
    return table;
}

}  // namespace wm::exchange
