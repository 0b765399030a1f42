// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/upkeep/task.h"

namespace wm::upkeep {

// What the hand or the eye makes of a figure that is copied from a manual, seen against what
// stood there before (common practice, say). Questions, never verdicts: the manual may well say so. A torque
// has its own in core/fastening/plausible.h.

enum class Misreading : std::uint8_t {
    DecimalPoint,  ///< ten times off
    OtherUnit,     ///< the same number of something else: hours for kilometres, days for months
    Thousand,      ///< litres for millilitres, kilograms for grams
    BothSides,     ///< one side for both, or the other way round
    Inches         ///< inches for millimetres: 25.4 times off
};

/// Ten times what stood there, or the same number in another unit; without anything that stood there, more
/// than a machine lives (1000 h, 60 months) or less than anything wears in (50 km).
/// Example: "15 km" where 15 h stood is "15 h"; "6 days" where 6 months stood is "6 months".
struct IntervalDoubt {
    Misreading misreading = Misreading::DecimalPoint;
    Limit typed{};
    Limit meant{};
};
std::optional<IntervalDoubt> doubtAbout(const std::vector<Limit>& typed, const std::vector<Limit>& stood);

/// A thousand, ten, or two times what stood there, of what a job uses.
/// Example: 700 ml where 350 ml stood may be both legs of a fork.
struct AmountDoubt {
    Misreading misreading = Misreading::DecimalPoint;
    std::int64_t meant = 0;
};
std::optional<AmountDoubt> doubtAbout(std::int64_t typed, std::int64_t stood, Unit unit);

/// Ten or 25.4 times what stood there; and ends of a range that lie ten times or more apart.
/// Example: 0.10 to 1.5 mm may be 0.10 to 0.15 mm.
struct LimitDoubt {
    Misreading misreading = Misreading::DecimalPoint;
    units::Decimal typed{};
    units::Decimal meant{};
};
std::optional<LimitDoubt> doubtAbout(const MeasurePoint& typed, const MeasurePoint& stood);

}  // namespace wm::upkeep
