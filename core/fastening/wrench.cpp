// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/wrench.h"

#include <cmath>
#include <numbers>
#include <utility>

namespace wm::fastening {

using base::Fault;
using base::refuse;

namespace {

constexpr double kHalfTurn = 180;

// The lever as a share of the wrench's own: 1 without an adapter.
base::Result<double> leverShare(double torque, double length, const Adapter& adapter) {
    const auto checked = [](const char* field, double value) -> base::Result<void> {
        if (!std::isfinite(value))
            return refuse(Fault::NotANumber, field);
        return {};
    };
    for (const auto& [field, value] :
         {std::pair("torque", torque), std::pair("length", length), std::pair("adapter", adapter.length),
          std::pair("angle", adapter.angle)})
        if (const auto finite = checked(field, value); !finite)
            return tl::unexpected(finite.error());
    if (torque <= 0)
        return refuse(Fault::NotPositive, "torque");
    if (length <= 0)
        return refuse(Fault::NotPositive, "length");
    if (adapter.length < 0)
        return refuse(Fault::Negative, "adapter");
    if (adapter.length > length)
        return refuse(Fault::TooLarge, "adapter");
    if (std::abs(adapter.angle) > kHalfTurn)
        return refuse(Fault::TooLarge, "angle", {}, "180");
    // Square to the wrench nothing changes, to the last digit.
    const double along = std::abs(adapter.angle) == kHalfTurn / 2
                             ? 0.0
                             : adapter.length * std::cos(adapter.angle * std::numbers::pi / kHalfTurn);
    const double share = (length + along) / length;
    if (share < kShortestLever)
        return refuse(Fault::Implausible, "angle");
    return share;
}

}  // namespace

base::Result<double> settingFor(double target, double length, const Adapter& adapter) {
    return leverShare(target, length, adapter).map([&](double share) { return target / share; });
}

base::Result<double> torqueAt(double setting, double length, const Adapter& adapter) {
    return leverShare(setting, length, adapter).map([&](double share) { return setting * share; });
}

base::Result<double> deviationPercent(double shown, double reference) {
    if (!std::isfinite(shown) || !std::isfinite(reference))
        return refuse(Fault::NotANumber, "reference");
    if (reference <= 0)
        return refuse(Fault::NotPositive, "reference");
    return 100 * (shown - reference) / reference;
}

Achieved achieved(double target, double percent) {
    // The deviation is counted on the reference: shown = reference (1 + percent / 100).
    return {target / (1 + percent / 100), target / (1 - percent / 100)};
}

}  // namespace wm::fastening
