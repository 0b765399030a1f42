// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/names.h"
#include "core/notebook/table.h"
#include "core/notebook/typed_figures.h"

namespace wm::notebook {

/// What a column of a notebook holds.
enum class Column : std::uint8_t {
    Unused,
    Date,
    Machine,
    What,  ///< practice, race, a new meter, a wash ...
    Hours,
    Meter,
    Distance,
    Starts,
    Ground,
    Wash,
    Crash,
    Rider,
    Job,
    Used,
    Minutes,
    Note
};

/// How a notebook is to be read. What a mechanic sets by hand is remembered by `headerKey`.
struct Layout {
    std::vector<Column> columns{};
    char decimal = ',';
    DateForm dates = DateForm::DayFirst;
    bool datesUnsure = false;  ///< nothing in the notebook says whether day or month stands first
    HoursForm hours = HoursForm::Number;
    bool machinesCarryOn = false;  ///< an empty machine cell means the one above
    bool datesCarryOn = false;

    [[nodiscard]] std::optional<std::size_t> at(Column column) const;
};

/// By the words of the header in several languages, else by what the columns hold. `machines` are the names
/// that the file knows already.
Layout guessLayout(const Table& table, const std::vector<std::string>& machines);
/// The forms of figures and dates again, after columns were set by hand.
void findForms(Layout& layout, const Table& table);

/// What the words of one header mean, or Unused.
Column columnNamed(std::string_view header);
/// The header as one text by which a layout is remembered; empty without a header.
std::string headerKey(const Table& table);

/// The text of a cell, empty if the line is too short for it.
std::string_view cellAt(const TableLine& line, std::optional<std::size_t> column);

}  // namespace wm::notebook

namespace wm::base {
template <>
struct Names<notebook::Column> {
    static constexpr std::array<std::string_view, 16> names{
        "unused", "date", "machine", "what",  "hours", "meter", "distance", "starts",
        "ground", "wash", "crash",   "rider", "job",   "used",  "minutes",  "note"};
};
}  // namespace wm::base
