// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/result.h"

namespace wm::fastening {

/// An offset adapter on the drive of a torque wrench. `length` is from the middle of the drive to the middle
/// of the fastener, in the unit of the wrench's length; `angle` in degrees between the wrench's axis and the
/// adapter: 0 straight on, 90 square to it (no correction), 180 back over the handle.
struct Adapter {
    double length = 0;
    double angle = 0;
};

/// Beyond twice the target a wrench would be set dangerously far from what it does.
inline constexpr double kShortestLever = 0.5;

/// What to set so that `target` reaches the fastener: T L / (L + E cos angle), with L from the middle of the
/// drive to the middle of the grip. In the unit of the target.
/// Example: 80 N·m, L 40 cm, E 5 cm straight on: 71.1 N·m.
/// Errors: NotANumber, NotPositive ("torque", "length"), Negative ("adapter"), TooLarge ("angle", over 180;
/// "adapter", longer than the wrench), Implausible ("angle": the adapter points so far back over the handle
/// that the lever is less than half of the wrench).
base::Result<double> settingFor(double target, double length, const Adapter& adapter);

/// What reaches the fastener at a setting; errors as settingFor.
base::Result<double> torqueAt(double setting, double length, const Adapter& adapter);

/// 100 (shown - reference) / reference, the deviation of ISO 6789. Errors: NotANumber, NotPositive.
base::Result<double> deviationPercent(double shown, double reference);

/// What reaches the fastener if the tool is off by up to `percent` of the reference either way (ISO 6789: 4,
/// or 6 for small tools and bars): 50 at 4 % is 48.1 to 52.1.
struct Achieved {
    double low = 0;
    double high = 0;
};
Achieved achieved(double target, double percent);

}  // namespace wm::fastening
