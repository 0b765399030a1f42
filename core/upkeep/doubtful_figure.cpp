// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/upkeep/doubtful_figure.h"

#include <algorithm>
#include <cmath>

namespace wm::upkeep {

using units::Decimal;

namespace {

constexpr double kAbout = 0.08;  // by how much a manual may differ from a round factor and still raise it
constexpr std::int64_t kLongHours = 100'000;  // hundredths: 1000 h
constexpr std::int64_t kLongMonths = 60;
constexpr std::int64_t kShortMetres = 50'000;
constexpr double kFarApart = 9;  // the ends of a range

// "1 ml" where 850 ml stood was a litre: far more than anything else between the two.
constexpr double kThousandFrom = 400;
constexpr double kThousandTo = 2500;

bool isAbout(double ratio, double factor) {
    return std::abs(ratio / factor - 1) <= kAbout;
}

bool isEither(double ratio, double factor) {
    return isAbout(ratio, factor) || isAbout(ratio * factor, 1);
}

// The number as it is read beside its unit: hours and kilometres are stored finer than they are said.
double numberOf(std::int64_t amount, Counter counter) {
    return static_cast<double>(amount) / static_cast<double>(partsOfOne(counter));
}

std::int64_t amountOf(double number, Counter counter) {
    return std::llround(number * static_cast<double>(partsOfOne(counter)));
}

bool isSameNumber(double a, double b) {
    return std::abs(a - b) < 1e-9;
}

Limit asOther(const Limit& typed, Counter counter) {
    return {.counter = counter, .every = amountOf(numberOf(typed.every, typed.counter), counter)};
}

// Without anything to hold it against.
std::optional<IntervalDoubt> doubtAlone(const Limit& typed) {
    if (typed.counter == Counter::Hours && typed.every > kLongHours)
        return IntervalDoubt{Misreading::OtherUnit, typed, asOther(typed, Counter::Metres)};
    if (typed.counter == Counter::Metres && typed.every < kShortMetres)
        return IntervalDoubt{Misreading::OtherUnit, typed, asOther(typed, Counter::Hours)};
    if (typed.counter == Counter::Months && typed.every > kLongMonths)
        return IntervalDoubt{Misreading::OtherUnit, typed, asOther(typed, Counter::Days)};
    return std::nullopt;
}

// The point one place to the left (by = -1) or to the right, digits kept: 120 is 12.0, 1.2 is 12.
Decimal shifted(const Decimal& value, int by) {
    if (by < 0)
        return {value.digits(), std::min(value.places() + 1, units::kMostPlaces)};
    return value.places() > 0 ? Decimal{value.digits(), value.places() - 1} : Decimal{value.digits() * 10, 0};
}

std::optional<LimitDoubt> doubtOfEnd(const std::optional<Decimal>& typed,
                                     const std::optional<Decimal>& stood) {
    if (!typed || !stood || typed->digits() == 0 || stood->digits() == 0)
        return std::nullopt;
    const double ratio = typed->toDouble() / stood->toDouble();
    if (isEither(ratio, 10))
        return LimitDoubt{Misreading::DecimalPoint, *typed, shifted(*typed, ratio > 1 ? -1 : 1)};
    if (isEither(ratio, 25.4))
        return LimitDoubt{Misreading::Inches, *typed, *stood};
    return std::nullopt;
}

std::optional<LimitDoubt> doubtOfRange(const MeasurePoint& typed) {
    if (!typed.least || !typed.most || typed.least->digits() <= 0 || typed.most->digits() <= 0)
        return std::nullopt;
    const Decimal lower = shifted(*typed.most, -1);
    if (typed.most->toDouble() < kFarApart * typed.least->toDouble() || lower < *typed.least)
        return std::nullopt;
    return LimitDoubt{Misreading::DecimalPoint, *typed.most, lower};
}

}  // namespace

std::optional<IntervalDoubt> doubtAbout(const std::vector<Limit>& typed, const std::vector<Limit>& stood) {
    for (const Limit& limit : typed) {
        const auto same = std::find_if(stood.begin(), stood.end(),
                                       [&](const Limit& other) { return other.counter == limit.counter; });
        if (same != stood.end()) {
            const double ratio = static_cast<double>(limit.every) / static_cast<double>(same->every);
            if (isEither(ratio, 10))
                return IntervalDoubt{Misreading::DecimalPoint, limit, *same};
            continue;
        }
        const double number = numberOf(limit.every, limit.counter);
        for (const Limit& other : stood)
            if (isSameNumber(number, numberOf(other.every, other.counter)))
                return IntervalDoubt{Misreading::OtherUnit, limit, other};
        if (const auto alone = doubtAlone(limit))
            return alone;
    }
    return std::nullopt;
}

std::optional<AmountDoubt> doubtAbout(std::int64_t typed, std::int64_t stood, Unit unit) {
    if (typed <= 0 || stood <= 0)
        return std::nullopt;
    const double ratio = static_cast<double>(typed) / static_cast<double>(stood);
    const bool isThousand = (ratio > kThousandFrom && ratio < kThousandTo) ||
                            (ratio > 1 / kThousandTo && ratio < 1 / kThousandFrom);
    if (unit != Unit::Piece && isThousand)
        return AmountDoubt{Misreading::Thousand, ratio > 1 ? typed / 1000 : typed * 1000};
    if (isEither(ratio, 10))
        return AmountDoubt{Misreading::DecimalPoint, ratio > 1 ? typed / 10 : typed * 10};
    const bool isTwice = unit == Unit::Piece ? typed == 2 * stood || stood == 2 * typed : isEither(ratio, 2);
    if (isTwice)
        return AmountDoubt{Misreading::BothSides, ratio > 1 ? typed / 2 : typed * 2};
    return std::nullopt;
}

std::optional<LimitDoubt> doubtAbout(const MeasurePoint& typed, const MeasurePoint& stood) {
    if (auto doubt = doubtOfEnd(typed.least, stood.least))
        return doubt;
    if (auto doubt = doubtOfEnd(typed.most, stood.most))
        return doubt;
    return doubtOfRange(typed);
}

}  // namespace wm::upkeep
