// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace wm::units {

// What a unit measures. Units of different kinds do not convert into each other.
enum class Measure : std::uint8_t {
    Torque,
    Pressure,
    Volume,
    Length,
    Mass,
    Force,
    Speed,
    Viscosity,
    Temperature
};

/// A unit by its symbol, as an exact fraction of the base unit of its measure (N·m, kPa, ml, mm, kg, N, m/s,
/// mm²/s, °C): base = (value + shift) * numerator / denominator.
/// Everything follows from the inch = 25.4 mm, the pound = 0.45359237 kg, standard gravity 9.80665 m/s², the
/// US gallon = 231 in³ and the imperial gallon = 4.54609 L (NIST SP 811 Appendix B, NIST Handbook 44 Appendix
/// C).
struct UnitOf {
    std::string_view symbol;
    Measure measure;
    double numerator;  ///< numerator and denominator are whole numbers that a double holds exactly
    double denominator;
    double shift = 0;
};

/// All units that convert() knows.
const std::vector<UnitOf>& knownUnits();

/// `value` of unit `from` in unit `to`, good to a few parts in 10^16.
/// Errors: WrongUnit (a symbol that is not known, or units of different measures), NotANumber (not finite).
base::Result<double> convert(double value, std::string_view from, std::string_view to);

}  // namespace wm::units
