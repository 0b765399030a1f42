// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "core/outlook/laws.h"
#include "core/usage/rows.h"

namespace wm::outlook {

/// On what ground and at what pace one kind of outing is ridden: parts of its hours, 1 together; none of them
/// = nobody ever stated an outing of this kind. Each outing is of one part.
struct GroundMix {
    struct Part {
        usage::Ground ground = usage::Ground::Unstated;
        usage::Pace pace = usage::Pace::Unstated;
        double share = 0;
    };
    std::vector<Part> parts{};
    /// The shares are known exactly (0) or rest on so many outings; then they are Dirichlet, and a ground
    /// that was never ridden is not foreseen.
    double seen = 0;

    void add(usage::Ground ground, usage::Pace pace, double amount);  ///< call `settle` after the last
    void settle();  ///< amounts become shares; mud and water first, in the order of the enumerations
};

/// The hours of one outing as a task weights them. Mean and variance are exact for hours that are as long on
/// one ground as on another; that the sum is gamma too is an approach whose error the tests state.
AmountLaw weightedLaw(const AmountLaw& hours, const GroundMix& mix,
                      std::span<const usage::HourWeight> weights);

/// What an hour of the mix counts in the mean; 1 without weights.
double meanWeight(const GroundMix& mix, std::span<const usage::HourWeight> weights);

}  // namespace wm::outlook
