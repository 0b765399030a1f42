// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wm::notebook {

/// What a figure may have been before the hand slipped, in hundredths, with how plain the slip is: 0 two
/// neighbouring figures swapped, 1 the mark at another place, 2 one figure too many, 3 one figure wrong, 4
/// one figure left out.
struct Likely {
    std::int64_t hundredths = 0;
    int slip = 0;
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
/// The plainest slip that fits; of equal ones the nearest. A plain slip (0, 1) that stays inside both ends is
/// believed even if it is not near; any other must be near.
std::optional<std::int64_t> bestLikely(std::string_view text, char decimal, const Fit& fit);

}  // namespace wm::notebook
