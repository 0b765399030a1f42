// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/printed.h"

#include <algorithm>
#include <cmath>

#include "core/units/convert.h"

namespace wm::units {

namespace {

// 38 has two, 0.05 one, 2.50 three.
int significantDigits(const Decimal& value) {
    const std::int64_t digits = value.digits();
    return static_cast<int>(std::to_string(digits < 0 ? -digits : digits).size());
}

}  // namespace

std::string convertedText(const Decimal& value, std::string_view from, std::string_view to, char mark) {
    const auto inTheOther = convert(value.toDouble(), from, to);
    if (from == to || !inTheOther || *inTheOther == 0)
        return value.text(mark);
    const double converted = *inTheOther;
    // The place of the last digit: 51.5 with two digits is rounded at 10^0, 221 at 10^1.
    const auto placeFor = [&](double figure) {
        return static_cast<int>(std::floor(std::log10(std::abs(figure)))) + 1 - significantDigits(value);
    };
    const auto roundedAt = [&](int place) {
        const double step = std::pow(10.0, std::abs(place));
        return place < 0 ? std::llround(converted * step) : std::llround(converted / step);
    };
    int place = std::max(placeFor(converted), -kMostPlaces);
    std::int64_t digits = roundedAt(place);
    // 9.97 with two digits becomes 10, not 10.0.
    const double rounded = static_cast<double>(digits) * std::pow(10.0, place);
    if (rounded != 0 && placeFor(rounded) > place) {
        place = placeFor(rounded);
        digits = roundedAt(place);
    }
    for (; place > 0; --place)
        digits *= 10;
    return Decimal{digits, -place}.text(mark);
}

}  // namespace wm::units
