// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace wm::units {

/// An exact decimal as somebody wrote it: 2.50 is not 2.5. Used for everything that is copied from a manual
/// or read off a tool (torque, limits, measurements), so that no figure shows more digits than its source.
class Decimal {
  public:
    constexpr Decimal() = default;
    /// `digits` scaled by 10^-places: Decimal{250, 2} is 2.50.
    constexpr Decimal(std::int64_t digits, int places) : digits_(digits), places_(places) {}

    [[nodiscard]] constexpr std::int64_t digits() const { return digits_; }
    [[nodiscard]] constexpr int places() const { return places_; }
    [[nodiscard]] double toDouble() const;
    /// The digits if there were `places` decimals, halves away from zero: {251, 2}.scaledTo(1) is 25.
    [[nodiscard]] std::int64_t scaledTo(int places) const;
    /// Always a digit before the mark ("0.5", never ".5"), as many decimals as were given.
    [[nodiscard]] std::string text(char mark = '.') const;

    /// Compares values: 2.50 equals 2.5.
    friend std::strong_ordering operator<=>(const Decimal& a, const Decimal& b);
    friend bool operator==(const Decimal& a, const Decimal& b) { return (a <=> b) == 0; }

  private:
    std::int64_t digits_ = 0;
    int places_ = 0;
};

inline constexpr int kMostPlaces = 6;
inline constexpr std::int64_t kMostDigits = 999'999'999'999;

/// Reads "12", "12.5" or "12,5", with a sign, spaces around it allowed; nothing else: no exponent, no
/// thousands marks, no "nan". At most kMostPlaces decimals and 12 digits.
/// Errors: Empty, NotANumber, TooLarge, each naming `field`.
base::Result<Decimal> parseDecimal(std::string_view field, std::string_view text);

}  // namespace wm::units
