// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/plausible.h"

#include <algorithm>
#include <vector>

#include "core/fastening/preload.h"
#include "core/units/convert.h"

namespace wm::fastening {

using units::Decimal;
using units::TorqueUnit;

namespace {

constexpr double kThickest = 12;  // mm; up to it a fastener is a bolt, and its strength sets the torque
constexpr double kMargin = 0.7;
constexpr double kLightly = 0.4;  // of the proof load
constexpr double kFully = 0.85;
constexpr PlausibleBand kShafts{12, 300};
constexpr PlausibleBand kSpokes{1.5, 12};

bool isShaft(JointKind kind) {
    using enum JointKind;
    return kind == Axle || kind == Steering || kind == Pivot || kind == Swingarm;
}

double newtonMetres(const Decimal& value, TorqueUnit unit) {
    return units::convert(value.toDouble(), base::nameOf(unit), base::nameOf(TorqueUnit::NewtonMetre))
        .value_or(0);
}

struct Meant {
    TorqueMisreading misreading;
    Decimal value;
    TorqueUnit unit;
};

// A decimal point one place to the left, digits kept: 120 is 12.0.
Decimal tenth(const Decimal& value) {
    return {value.digits(), std::min(value.places() + 1, units::kMostPlaces)};
}

Decimal tenfold(const Decimal& value) {
    return value.places() > 0 ? Decimal{value.digits(), value.places() - 1} : Decimal{value.digits() * 10, 0};
}

// What the same keys could have stood for, the classic one first.
std::vector<Meant> readings(const Decimal& value, TorqueUnit unit) {
    using enum TorqueUnit;
    switch (unit) {
        case NewtonMetre:
            return {{TorqueMisreading::DecimalPoint, tenth(value), unit},
                    {TorqueMisreading::KilogramMetre, value, KilogramForceMetre},
                    {TorqueMisreading::InchForFoot, value, PoundForceInch},
                    {TorqueMisreading::Centimetre, value, KilogramForceCentimetre},
                    {TorqueMisreading::DecimalPoint, tenfold(value), unit}};
        case PoundForceFoot:
            return {{TorqueMisreading::InchForFoot, value, PoundForceInch},
                    {TorqueMisreading::DecimalPoint, tenth(value), unit},
                    {TorqueMisreading::DecimalPoint, tenfold(value), unit}};
        case PoundForceInch:
            return {{TorqueMisreading::InchForFoot, value, PoundForceFoot},
                    {TorqueMisreading::DecimalPoint, tenth(value), unit},
                    {TorqueMisreading::DecimalPoint, tenfold(value), unit}};
        case KilogramForceMetre:
            return {{TorqueMisreading::KilogramMetre, value, NewtonMetre},
                    {TorqueMisreading::Centimetre, value, KilogramForceCentimetre},
                    {TorqueMisreading::DecimalPoint, tenth(value), unit},
                    {TorqueMisreading::DecimalPoint, tenfold(value), unit}};
        case KilogramForceCentimetre:
            break;
    }
    return {{TorqueMisreading::Centimetre, value, KilogramForceMetre},
            {TorqueMisreading::Centimetre, value, NewtonMetre},
            {TorqueMisreading::DecimalPoint, tenth(value), unit},
            {TorqueMisreading::DecimalPoint, tenfold(value), unit}};
}

}  // namespace

std::optional<PlausibleBand> plausibleBand(JointKind kind, std::string_view written) {
    if (kind == JointKind::Spoke)
        return kSpokes;
    const auto thread = parseThread("thread", written);
    if (!thread)
        return std::nullopt;
    if (thread->diameter > kThickest || isShaft(kind))
        return kShafts;
    const double bearing = bearingDiameter(*thread);
    const double weak = proofLoad("5.8", *thread).value_or(0);
    const double strong = proofLoad("10.9", *thread).value_or(0);
    return PlausibleBand{kMargin * torqueFor(kLightly * weak, *thread, {0.10, 0.10}, bearing),
                         torqueFor(kFully * strong, *thread, {0.16, 0.16}, bearing)};
}

std::optional<TorqueDoubt> doubtAbout(const Decimal& value, TorqueUnit unit, JointKind kind,
                                      std::string_view thread) {
    const auto band = plausibleBand(kind, thread);
    const auto isIn = [&](double torque) { return torque >= band->low && torque <= band->high; };
    if (!band || isIn(newtonMetres(value, unit)))
        return std::nullopt;
    for (const Meant& meant : readings(value, unit))
        if (isIn(newtonMetres(meant.value, meant.unit)))
            return TorqueDoubt{band->low, band->high, meant.misreading, meant.value, meant.unit};
    return std::nullopt;
}

}  // namespace wm::fastening
