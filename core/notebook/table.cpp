// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/table.h"

#include <algorithm>
#include <array>
#include <map>

#include "core/base/text.h"
#include "core/notebook/typed_figures.h"

namespace wm::notebook {

using base::Fault;
using base::refuse;
using base::Result;

namespace {

constexpr std::array<char, 4> kSeparators{';', '\t', ',', '|'};
constexpr std::size_t kLinesLookedAt = 200;
constexpr std::size_t kCellsBetweenReports = 2'000;

// How well a separator explains the first lines: lines of the commonest width, weighed by that width.
std::size_t fitOf(std::string_view text, char separator) {
    std::map<std::size_t, std::size_t> widths;
    base::CellReader reader(text, separator);
    for (std::size_t line = 0; line < kLinesLookedAt && !reader.atEnd();) {
        const TableLine row = reader.next();
        if (base::areBlank(row.cells) && !row.tooWide)
            continue;
        if (line == 0 && row.cells.size() == 1)
            return 0;
        ++widths[row.cells.size()];
        ++line;
    }
    std::size_t best = 0;
    for (const auto& [width, lines] : widths)
        if (width > 1)
            best = std::max(best, lines * 100 + std::min<std::size_t>(width, 40));
    return best;
}

char separatorOf(std::string_view text) {
    char best = '\0';
    std::size_t fit = 0;
    // Spreadsheets may say it themselves in a first line.
    if (text.starts_with("sep=") && text.size() > 4)
        return text[4];
    for (const char separator : kSeparators)
        if (const std::size_t now = fitOf(text, separator); now > fit) {
            best = separator;
            fit = now;
        }
    return best;
}

// A notebook is read for what it says: what is no text in it can't be asked about a cell at a time.
void makeHarmless(TableLine& line) {
    for (std::string& cell : line.cells)
        if (!base::isPlain(cell))
            cell = base::trimmed(base::harmless(cell));
}

// A header names things; a line of facts has a day in it.
bool isHeader(const TableLine& line) {
    return std::none_of(line.cells.begin(), line.cells.end(),
                        [](const auto& cell) { return looksLikeDate(cell) || isPlainNumber(cell); });
}

tl::unexpected<base::Error> tooLarge(std::string place, std::size_t most) {
    return refuse(Fault::TooLarge, std::move(place), {}, std::to_string(most));
}

}  // namespace

Result<Table> readTable(std::string_view bytes, const Progress& progress, std::optional<char> separator) {
    auto plain = plainText(bytes);
    if (!plain)
        return tl::unexpected(plain.error());
    const std::string_view text = plain->text;
    const bool onlySeparators = text.find_first_not_of(";,|\t\r\n ") == std::string_view::npos;
    if (onlySeparators)
        return refuse(Fault::Empty, "notebook");
    Table table{.encoding = plain->encoding, .separator = separator ? *separator : separatorOf(text)};
    if (table.separator == '\0')
        return refuse(Fault::NoColumns, "notebook");
    base::CellReader reader(text, table.separator);
    if (text.starts_with("sep="))
        reader.next();
    std::size_t width = 0;
    std::size_t cells = 0;
    while (!reader.atEnd()) {
        TableLine row = reader.next();
        if (row.tooWide)
            return tooLarge("line " + std::to_string(row.line), base::kMostCells);
        if (base::areBlank(row.cells))
            continue;
        cells += row.cells.size();
        if (table.lines.size() == kMostLines)
            return tooLarge("lines", kMostLines);
        if (cells > kMostCellsOfAll)
            return tooLarge("cells", kMostCellsOfAll);
        makeHarmless(row);
        width = std::max(width, row.cells.size());
        table.lines.push_back(std::move(row));
        if (progress && table.lines.size() % kCellsBetweenReports == 0 && !progress(reader.at(), text.size()))
            return refuse(Fault::Stopped, "notebook");
    }
    table.quoteLeftOpen = reader.quoteLeftOpen();
    if (table.lines.empty())
        return refuse(Fault::Empty, "notebook");
    table.headed = isHeader(table.lines.front());
    if (table.headed) {
        table.header = std::move(table.lines.front().cells);
        table.lines.erase(table.lines.begin());
    } else {
        table.header.resize(width);
    }
    return table;
}

}  // namespace wm::notebook
