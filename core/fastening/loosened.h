// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <span>
#include <vector>

#include "core/calendar/date.h"
#include "core/fastening/rows.h"
#include "core/units/quantity.h"

namespace wm::fastening {

/// What the re-checks of one joint say. A check is a look with the wrench or at the paint line: found fine,
/// found moved, mark broken. Its exposure is what was ridden since the joint was last known to be tight.
struct Loosening {
    JointId joint{};
    std::int64_t checks = 0;
    std::int64_t moved = 0;                ///< checks that found it moved
    std::int64_t movedSince = 0;           ///< those of them whose hours are known
    units::Hours ridden{};                 ///< between being known tight and each of these checks
    std::optional<calendar::Date> last{};  ///< when it was last found moved
    std::int64_t degrees = 0;              ///< the furthest that it moved, if anybody noted it
};

/// Hours that the machine of a joint was ridden after the first day, up to the other.
using RiddenBetween = std::function<units::Hours(JointId, calendar::Date, calendar::Date)>;

/// One line a joint that was ever checked, those that moved most often first (then the most per hour).
std::vector<Loosening> looseningsOf(std::span<const JointMark> marks, const RiddenBetween& ridden,
                                    calendar::Date on);

/// Is a joint looser than its kind? Times moved over hours ridden (what moved in unknown hours is left out),
/// against the other joints of its kind.
struct Comparison {
    std::int64_t moved = 0;
    units::Hours ridden{};
    std::int64_t othersMoved = 0;
    units::Hours othersRidden{};
    std::int64_t compared = 1;  ///< how many joints were looked at this way
    double chance = 1;          ///< that it moves so often if it were like the others
    /// The chance, made good for looking at so many joints (Bonferroni), is under 1 in 20, and it moved twice
    /// or more.
    bool stands = false;
};

/// The exact conditional test of two Poisson rates (Przyborowski and Wilenski 1940): were they alike, each of
/// the n times that something moved would have fallen on this joint with the chance of its share of the
/// hours, so what fell on it is binomial. One-sided. Nothing if neither has hours, or the others have none.
std::optional<double> chanceOfAsMany(std::int64_t moved, units::Hours ridden, std::int64_t othersMoved,
                                     units::Hours othersRidden);

/// `line` against all `lines` whose joint is of the same kind.
std::optional<Comparison> comparedWithKind(const Loosening& line, std::span<const Loosening> lines,
                                           const std::function<JointKind(JointId)>& kindOf);

}  // namespace wm::fastening
