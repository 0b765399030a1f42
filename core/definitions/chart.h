// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "core/book/book.h"
#include "core/fastening/plausible.h"

namespace wm::definitions {

/// The columns of a machine's torque chart as it is typed from the manual, in this order.
enum class ChartColumn : std::uint8_t {
    Joint,
    Thread,
    Count,
    Torque,
    Unit,
    Stages,
    Condition,
    Locking,
    Renew,
    Page,
    Source,
    Checked
};
inline constexpr std::size_t kChartColumns = 12;

/// A row of the grid: cells as they were typed.
using ChartRow = std::array<std::string, kChartColumns>;

/// Rows from what a spreadsheet puts on the clipboard: cells parted by tabs, or by semicolons if there is no
/// tab, one row a line. A first line of headings ("joint", "torque", "page" ...) says the order of the
/// columns (others are left out); without one they are in the order of ChartColumn. A cell in quotation marks
/// may hold the mark that parts cells. Blank lines are left out; nothing is read as a formula.
std::vector<ChartRow> readChart(std::string_view text);

struct ChartFault {
    std::size_t row = 0;
    ChartColumn column = ChartColumn::Joint;
    base::Error error{};
};

/// A figure that looks like a misreading: a question, which stands in the way of nothing.
struct ChartDoubt {
    std::size_t row = 0;
    fastening::TorqueDoubt doubt{};
};

/// What the grid would write: versions for saveJoints, and what can't be written yet.
struct Chart {
    std::vector<fastening::JointVersion> versions{};  ///< new or changed, in order of the rows
    std::vector<ChartFault> faults{};
    std::vector<ChartDoubt> doubts{};
    std::size_t unchanged = 0;
};

/// Checks every cell on its own. A joint that the machine has, by name or code, gets a new version in which
/// empty cells leave what stands there (stages that hold the torque follow it); any other is a new one. A row
/// without a source takes that of the row above. Faults: Empty (joint; source of a torque), Duplicate (a
/// joint twice), and what the parsers say.
Chart checkChart(const book::Book& book, MachineId machine, const std::vector<ChartRow>& rows);

}  // namespace wm::definitions
