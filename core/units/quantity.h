// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace wm::units {

/// A whole number of one base unit. Adding and comparing is for like with like only.
/// The bound of the parsers (10^9) keeps sums of a million facts inside 64 bits.
template <class Tag>
class Quantity {
  public:
    constexpr Quantity() = default;
    explicit constexpr Quantity(std::int64_t count) : count_(count) {}
    [[nodiscard]] constexpr std::int64_t count() const { return count_; }

    constexpr Quantity& operator+=(Quantity other) {
        count_ += other.count_;
        return *this;
    }
    constexpr Quantity& operator-=(Quantity other) {
        count_ -= other.count_;
        return *this;
    }
    friend constexpr Quantity operator+(Quantity a, Quantity b) { return a += b; }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return a -= b; }
    friend constexpr Quantity operator-(Quantity a) { return Quantity{-a.count_}; }
    friend constexpr auto operator<=>(Quantity, Quantity) = default;

  private:
    std::int64_t count_ = 0;
};

using Hours = Quantity<struct HundredthsOfAnHour>;  ///< count = hundredths of an hour
using Metres = Quantity<struct WholeMetres>;        ///< count = metres
using Minutes = Quantity<struct WholeMinutes>;      ///< count = minutes, also a time of day after midnight
using Money = Quantity<struct MinorUnits>;          ///< count = cents or the like; the file knows no currency

/// "61.3" or "61,37": hours with up to two decimals. Errors: Empty, NotANumber, Negative, TooLarge (over
/// 100,000 h), Malformed (more than two decimals).
base::Result<Hours> parseHours(std::string_view field, std::string_view text);
/// Hours with one decimal as meters show them, two if the second is not zero: "61.3", "0.37".
std::string hoursText(Hours hours, char mark = '.');

/// Kilometres with up to three decimals -> metres. Errors as parseHours; at most 1,000,000 km.
base::Result<Metres> parseKilometres(std::string_view field, std::string_view text);
std::string kilometresText(Metres metres, char mark = '.');

/// "18:30" -> minutes after midnight. Errors: Empty, Malformed.
base::Result<Minutes> parseTimeOfDay(std::string_view field, std::string_view text);
std::string timeOfDayText(Minutes sinceMidnight);

/// A whole number from 0 to `most`. Errors: Empty, NotANumber, Negative, TooLarge.
base::Result<std::int64_t> parseCount(std::string_view field, std::string_view text, std::int64_t most);

}  // namespace wm::units
