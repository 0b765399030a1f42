// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <utility>

#include "core/base/result.h"
#include "core/units/decimal.h"
#include "core/units/torque.h"

namespace wm::units {

/// The symbol of convert() that somebody means who writes "ft lb", "lbf·ft", "foot-pounds", "kgm", "cc" or
/// "psi": case, blanks, points, dashes and middle dots don't matter. Nothing for a word that is no unit, or
/// that could be two ("qt": US or imperial).
std::optional<std::string_view> unitNamed(std::string_view spelled);

/// A figure with the unit that was typed behind it; `unit` empty if none was.
struct Measured {
    Decimal value{};
    std::string_view unit{};
};

/// Reads "25 ft lb", "2,5 kgm", "0.85 bar" or a bare "110". Digits stay as they were written.
/// Errors: those of parseDecimal; WrongUnit (`given` the word) for letters that are no unit.
base::Result<Measured> parseMeasured(std::string_view field, std::string_view text);

/// Where the second end of a range begins in "18-22", "18 to 22" or "18..22", and how long the mark between
/// is; a sign is no mark. Nothing in a single figure.
std::optional<std::pair<std::size_t, std::size_t>> rangeMark(std::string_view text);

/// A torque as typed from a manual.
struct TypedTorque {
    Decimal value{};
    std::optional<TorqueUnit> unit{};  ///< the one that was typed behind it
};

/// "N·m, lbf·ft, lbf·in, kgf·m, kgf·cm": what may stand behind a torque.
std::string torqueUnits();
/// Errors: those of parseMeasured; WrongUnit for no unit of a torque (`wanted` those there are); NotPositive.
base::Result<TypedTorque> parseTorque(std::string_view field, std::string_view text);

/// "18-22 ft lb", "18 to 22 Nm", "25": one figure, or the two ends of a range, in one line. A unit behind the
/// first end holds for both. Errors: those of parseTorque; OutOfOrder (the end below the beginning);
/// WrongUnit if the two ends have different ones.
struct TypedTorqueRange {
    Decimal low{};
    std::optional<Decimal> high{};
    std::optional<TorqueUnit> unit{};
};
base::Result<TypedTorqueRange> parseTorqueRange(std::string_view field, std::string_view text);

}  // namespace wm::units
