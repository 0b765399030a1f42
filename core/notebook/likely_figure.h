// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace wm::notebook {

/// What a hand does to a figure while it types, the plainest first.
enum class TypingError : std::uint8_t {
    Swapped,     ///< two neighbouring figures
    Mark,        ///< the decimal mark at another place
    OneTooMany,  ///< one figure
    OneWrong,
    OneMissing
};

/// A figure that may have been meant, in hundredths, and the error that made of it what stands there.
struct Likely {
    std::int64_t hundredths = 0;
    TypingError error = TypingError::Swapped;
};
std::vector<Likely> likelyFigures(std::string_view text, char decimal);

/// What the figure must fit: not under `least`, not over `most`, near `near` if that is known.
struct Fit {
    std::int64_t least = 0;
    std::optional<std::int64_t> most{};
    std::optional<std::int64_t> near{};
    std::int64_t tolerance = 0;
    bool plainOnly = false;  ///< only figures swapped, or the mark
};

/// The figure that fits with the plainest error; of equal ones the nearest. One that was swapped, or has the
/// mark at another place, is believed if it stays inside both ends, near or not; any other must be near.
std::optional<std::int64_t> bestLikely(std::string_view text, char decimal, const Fit& fit);

}  // namespace wm::notebook
