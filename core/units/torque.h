// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/names.h"
#include "core/units/decimal.h"

namespace wm::units {

enum class TorqueUnit : std::uint8_t {
    NewtonMetre,
    PoundForceFoot,
    PoundForceInch,
    KilogramForceMetre,
    KilogramForceCentimetre
};

/// A torque as it reads in another unit, with no more digits than its source: a manual's 38 lbf·ft is "52",
/// its 2.5 kgf·m "25" N·m. Digits are significant ones, a written zero at the end among them. In its own unit
/// the text stays as it was written.
std::string convertedTorqueText(const Decimal& value, TorqueUnit from, TorqueUnit to, char mark = '.');

}  // namespace wm::units

namespace wm::base {
template <>
struct Names<units::TorqueUnit> {
    static constexpr std::array<std::string_view, 5> names{"N·m", "lbf·ft", "lbf·in", "kgf·m", "kgf·cm"};
};
}  // namespace wm::base
