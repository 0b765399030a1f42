// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <vector>

#include "core/calendar/date.h"
#include "core/fastening/rows.h"
#include "core/fastening/tool_rows.h"

namespace wm::fastening {

/// What a tool is checked by if neither it nor its certificate says otherwise: 12 months or 5,000 cycles,
/// whichever comes first (ISO 6789-1:2017, for users who have no interval of their own; from memory of it).
inline constexpr std::int64_t kMonthsBetween = 12;
inline constexpr std::int64_t kCyclesBetween = 5000;

/// The largest deviation that ISO 6789 permits a tool of this type and capacity, in percent of the torque;
/// nothing for a tool of no stated type. 4 % for dials, electronics and adjustable wrenches over 10 N·m, 6 %
/// for smaller ones, bars and screwdrivers.
std::optional<double> permittedPercent(const Tool& tool);
/// True where that figure rests on memory of the standard alone: any stated type but II A, whose figures a
/// tool maker's manual restates.
bool permittedFromMemory(const Tool& tool);

/// A figure of the tool in N·m.
double inNewtonMetres(const units::Decimal& value, units::TorqueUnit unit);

/// Unknown: never checked. Out: left out of tolerance by its last check, not to be used.
enum class ToolState : std::uint8_t { InHand, DueByDate, DueByCycles, Unknown, Out };

/// How a tool stands: its last check and what it has done since.
struct ToolStanding {
    ToolState state = ToolState::Unknown;
    const Calibration* last = nullptr;
    std::int64_t cycles = 0;  ///< clicks since the last check, or ever
    std::int64_t cyclesAllowed = kCyclesBetween;
    std::optional<calendar::Date> nextOn{};  ///< by date; nothing if it was never checked
};

/// How often the tool clicked for one mark: fasteners of the joint times torques of its stages.
using CyclesOf = std::function<std::int64_t(const JointMark&)>;

/// Standing on a day from the facts up to it; a mark of the day of a check counts if it was entered later.
/// A check that found the tool out of tolerance halves its interval (common practice) unless the certificate
/// names the next one.
ToolStanding standingOf(const Tool& tool, std::span<const Calibration> calibrations,
                        std::span<const JointMark> marks, const CyclesOf& cyclesOf, calendar::Date on);

/// Serves: between a fifth of its capacity and all of it, and in its range. Edge: in its range, but in the
/// bottom fifth of its capacity, where ISO 6789 doesn't check it, or at a figure that its scale can't be set
/// to. Outside: beyond its range.
enum class Reach : std::uint8_t { Serves, Edge, Outside };

/// What stands in the way of a tool at a point.
struct Fit {
    Reach reach = Reach::Outside;
    bool bottomFifth = false;
    bool betweenSteps = false;  ///< its scale has no such figure
    double share = 0;           ///< of its capacity, 0 to 1 and beyond
};

/// How a tool meets a torque; `aim` in `unit`.
Fit fitOf(const Tool& tool, const units::Decimal& aim, units::TorqueUnit unit);

struct Choice {
    const Tool* tool = nullptr;
    ToolStanding standing{};
    Fit fit{};
};

/// The tools of the drawer for one torque, best first: those that serve it, then those at their edge, then
/// those that don't reach; among them checked ones before those that are due and those before any
/// that was never checked, close tolerance before wide, then the one
/// nearest to 60 % of its capacity. Tools that were left out of tolerance or are out of the drawer are not
/// offered.
std::vector<Choice> toolsFor(const units::Decimal& aim, units::TorqueUnit unit,
                             std::span<const Choice> drawer);

/// What to set for a range: its middle, with one decimal more if it needs one. 18 to 22 is 20, 4.0 to 4.6 is
/// 4.3, 9 to 12 is 10.5.
units::Decimal aimOf(const units::Decimal& low, const std::optional<units::Decimal>& high);

}  // namespace wm::fastening
