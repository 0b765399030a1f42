// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/convert.h"

#include <algorithm>
#include <cmath>

namespace wm::units {

using base::Fault;
using base::refuse;

const std::vector<UnitOf>& knownUnits() {
    using enum Measure;
    static const std::vector<UnitOf> units{
        {"N·m", Torque, 1, 1},
        {"kgf·m", Torque, 980'665, 100'000},
        {"kgf·cm", Torque, 980'665, 10'000'000},
        {"lbf·ft", Torque, 3'389'544'870'828'501, 2'500'000'000'000'000},
        {"lbf·in", Torque, 1'129'848'290'276'167, 10'000'000'000'000'000},
        {"ozf·in", Torque, 1'129'848'290'276'167, 160'000'000'000'000'000},
        {"kPa", Pressure, 1, 1},
        {"bar", Pressure, 100, 1},
        {"kgf/cm²", Pressure, 980'665, 10'000},
        {"psi", Pressure, 8'896'443'230'521, 1'290'320'000'000},
        {"ml", Volume, 1, 1},
        {"cm³", Volume, 1, 1},
        {"l", Volume, 1'000, 1},
        {"in³", Volume, 16'387'064, 1'000'000},
        {"US fl oz", Volume, 473'176'473, 16'000'000},
        {"US pt", Volume, 473'176'473, 1'000'000},
        {"US qt", Volume, 473'176'473, 500'000},
        {"US gal", Volume, 473'176'473, 125'000},
        {"imp fl oz", Volume, 454'609, 16'000},
        {"imp pt", Volume, 454'609, 800},
        {"imp qt", Volume, 454'609, 400},
        {"imp gal", Volume, 454'609, 100},
        {"mm", Length, 1, 1},
        {"cm", Length, 10, 1},
        {"m", Length, 1'000, 1},
        {"km", Length, 1'000'000, 1},
        {"thou", Length, 254, 10'000},
        {"in", Length, 254, 10},
        {"ft", Length, 3'048, 10},
        {"mi", Length, 1'609'344, 1},
        {"g", Mass, 1, 1'000},
        {"kg", Mass, 1, 1},
        {"oz", Mass, 45'359'237, 1'600'000'000},
        {"lb", Mass, 45'359'237, 100'000'000},
        {"N", Force, 1, 1},
        {"kgf", Force, 980'665, 100'000},
        {"lbf", Force, 8'896'443'230'521, 2'000'000'000'000},
        {"m/s", Speed, 1, 1},
        {"km/h", Speed, 10, 36},
        {"mph", Speed, 44'704, 100'000},
        {"mm²/s", Viscosity, 1, 1},
        {"cSt", Viscosity, 1, 1},
        {"m²/s", Viscosity, 1'000'000, 1},
        {"°C", Temperature, 1, 1},
        {"°F", Temperature, 5, 9, -32},
        {"K", Temperature, 1, 1, -273.15},
    };
    return units;
}

base::Result<double> convert(double value, std::string_view from, std::string_view to) {
    const auto find = [](std::string_view symbol) {
        return std::find_if(knownUnits().begin(), knownUnits().end(),
                            [symbol](const UnitOf& unit) { return unit.symbol == symbol; });
    };
    const auto source = find(from);
    const auto target = find(to);
    if (source == knownUnits().end())
        return refuse(Fault::WrongUnit, "from", std::string(from));
    if (target == knownUnits().end() || target->measure != source->measure)
        return refuse(Fault::WrongUnit, "to", std::string(to), std::string(from));
    if (!std::isfinite(value))
        return refuse(Fault::NotANumber, "value");
    const double inBase = (value + source->shift) * source->numerator / source->denominator;
    return inBase * target->denominator / target->numerator - target->shift;
}

}  // namespace wm::units
