// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/quantity.h"

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/units/decimal.h"

namespace wm::units {

using base::Fault;
using base::refuse;

namespace {

// A number that is not negative, with at most `places` decimals, as a count of 10^-places.
base::Result<std::int64_t> parseScaled(std::string_view field, std::string_view text, int places,
                                       std::int64_t most) {
    const auto number = parseDecimal(field, text);
    if (!number)
        return tl::unexpected(number.error());
    if (number->digits() < 0)
        return refuse(Fault::Negative, std::string(field), std::string(text));
    if (number->places() > places && Decimal{number->scaledTo(places), places} != *number)
        return refuse(
            Fault::Malformed, std::string(field), std::string(text),
            places == 0 ? "a whole number" : fmt::format("a figure with at most {} decimals", places));
    if (*number > Decimal{most, 0})
        return refuse(Fault::TooLarge, std::string(field), std::string(text), std::to_string(most));
    return number->scaledTo(places);
}

}  // namespace

base::Result<Hours> parseHours(std::string_view field, std::string_view text) {
    return parseScaled(field, text, 2, 100'000).map([](std::int64_t n) { return Hours{n}; });
}

std::string hoursText(Hours hours, char mark) {
    const bool tenths = hours.count() % 10 == 0;
    return tenths ? Decimal{hours.count() / 10, 1}.text(mark) : Decimal{hours.count(), 2}.text(mark);
}

base::Result<Metres> parseKilometres(std::string_view field, std::string_view text) {
    return parseScaled(field, text, 3, 1'000'000).map([](std::int64_t n) { return Metres{n}; });
}

std::string kilometresText(Metres metres, char mark) {
    return metres.count() % 1000 == 0 ? std::to_string(metres.count() / 1000)
                                      : Decimal{Decimal{metres.count(), 3}.scaledTo(1), 1}.text(mark);
}

base::Result<Minutes> parseTimeOfDay(std::string_view field, std::string_view text) {
    const std::string_view rest = base::trimmed(text);
    if (rest.empty())
        return refuse(Fault::Empty, std::string(field));
    const auto parts = base::split(rest, ':');
    if (parts.size() != 2)
        return refuse(Fault::Malformed, std::string(field), std::string(text), "18:30");
    const auto hour = parseCount(field, parts[0], 24);
    const auto minute = parseCount(field, parts[1], 59);
    if (!hour || !minute || (*hour == 24 && *minute != 0))
        return refuse(Fault::Malformed, std::string(field), std::string(text), "18:30");
    return Minutes{*hour * 60 + *minute};
}

std::string timeOfDayText(Minutes sinceMidnight) {
    return fmt::format("{}:{:02}", sinceMidnight.count() / 60, sinceMidnight.count() % 60);
}

base::Result<std::int64_t> parseCount(std::string_view field, std::string_view text, std::int64_t most) {
    return parseScaled(field, text, 0, most);
}

}  // namespace wm::units
