// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/decimal.h"

#include <array>

#include "core/base/text.h"

namespace wm::units {

using base::Fault;
using base::refuse;

namespace {

constexpr std::array<std::int64_t, 7> kPowers{1, 10, 100, 1'000, 10'000, 100'000, 1'000'000};

std::int64_t power(int places) {
    return kPowers.at(static_cast<std::size_t>(places));
}

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

}  // namespace

double Decimal::toDouble() const {
    return static_cast<double>(digits_) / static_cast<double>(power(places_));
}

std::int64_t Decimal::scaledTo(int places) const {
    if (places >= places_)
        return digits_ * power(places - places_);
    const std::int64_t step = power(places_ - places);
    const std::int64_t half = step / 2;
    return digits_ >= 0 ? (digits_ + half) / step : -((-digits_ + half) / step);
}

std::string Decimal::text(char mark) const {
    const std::int64_t whole = digits_ / power(places_);
    std::string result = (digits_ < 0 ? "-" : "") + std::to_string(whole < 0 ? -whole : whole);
    if (places_ > 0) {
        const std::int64_t rest = digits_ % power(places_);
        const std::string fraction = std::to_string(rest < 0 ? -rest : rest);
        result += mark + std::string(static_cast<std::size_t>(places_) - fraction.size(), '0') + fraction;
    }
    return result;
}

std::strong_ordering operator<=>(const Decimal& a, const Decimal& b) {
    // 12 digits and 6 places: the common scale stays below 10^18 and fits.
    return a.scaledTo(kMostPlaces) <=> b.scaledTo(kMostPlaces);
}

base::Result<Decimal> parseDecimal(std::string_view field, std::string_view text) {
    const std::string given(text);
    std::string_view rest = base::trimmed(text);
    if (rest.empty())
        return refuse(Fault::Empty, std::string(field));
    bool negative = false;
    if (rest.front() == '-' || rest.front() == '+') {
        negative = rest.front() == '-';
        rest.remove_prefix(1);
    }
    std::int64_t digits = 0;
    int places = 0;
    bool afterMark = false;
    bool any = false;
    for (const char c : rest) {
        if ((c == '.' || c == ',') && !afterMark) {
            afterMark = true;
            continue;
        }
        if (!isDigit(c))
            return refuse(Fault::NotANumber, std::string(field), given);
        digits = digits * 10 + (c - '0');
        places += afterMark ? 1 : 0;
        any = true;
        if (digits > kMostDigits || places > kMostPlaces)
            return refuse(Fault::TooLarge, std::string(field), given, std::to_string(kMostDigits));
    }
    if (!any)
        return refuse(Fault::NotANumber, std::string(field), given);
    return Decimal{negative ? -digits : digits, places};
}

}  // namespace wm::units
