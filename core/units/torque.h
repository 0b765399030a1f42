// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "core/base/names.h"

namespace wm::units {

enum class TorqueUnit : std::uint8_t {
    NewtonMetre,
    PoundForceFoot,
    PoundForceInch,
    KilogramForceMetre,
    KilogramForceCentimetre
};

}  // namespace wm::units

namespace wm::base {
template <>
struct Names<units::TorqueUnit> {
    static constexpr std::array<std::string_view, 5> names{"N·m", "lbf·ft", "lbf·in", "kgf·m", "kgf·cm"};
};
}  // namespace wm::base
