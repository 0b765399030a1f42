// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "core/fastening/rows.h"

namespace wm::fastening {

/// What the hand or the eye makes of a torque.
enum class TorqueMisreading : std::uint8_t {
    InchForFoot,    ///< lbf·in and lbf·ft taken for one another: 12 times off
    KilogramMetre,  ///< kgf·m and N·m taken for one another: 9.8 times off
    Centimetre,     ///< kgf·cm for kgf·m or N·m
    DecimalPoint    ///< a decimal mark lost or put in the wrong place: 10 times off
};

/// A figure far outside what threads of this size take, and what was probably meant. A question, never a
/// verdict: the band is wide and says nothing about the right figure.
struct TorqueDoubt {
    double low = 0;   ///< N·m, plausible for the thread
    double high = 0;  ///< N·m
    TorqueMisreading misreading = TorqueMisreading::DecimalPoint;
    units::Decimal meant{};
    units::TorqueUnit meantUnit = units::TorqueUnit::NewtonMetre;
};

/// A band for catching misreadings only, N·m: bolts of class 5.8 lightly tightened to 10.9 fully, friction
/// 0.10 to 0.16, by geometry up to M12; above that, and on axles, stems and pivots, what hollow shafts and
/// thin nuts of bikes take (common practice). Nothing where the thread is not known, but for spokes.
struct PlausibleBand {
    double low = 0;
    double high = 0;
};
std::optional<PlausibleBand> plausibleBand(JointKind kind, std::string_view thread);

/// The doubt, if the figure lies outside the band and one misreading brings it back in.
/// Example: 120 N·m on an M6 cover bolt is "12.0 N·m"; 1.1 N·m on an M8 is "1.1 kgf·m".
std::optional<TorqueDoubt> doubtAbout(const units::Decimal& value, units::TorqueUnit unit, JointKind kind,
                                      std::string_view thread);

}  // namespace wm::fastening
