// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <random>
#include <utility>
#include <vector>

#include "core/outlook/odds.h"

// The outlook's model once more, as plainly as can be: one future after the other, day by day, with the
// distributions of the standard library. What the quick reckoning has to agree with.
namespace wm::outlook::plain {

/// What one future has used up by the evening of each day, today first.
struct Future {
    struct Day {
        double hours = 0;                ///< hundredths
        std::vector<double> weighted{};  ///< the same, by each of the weightings that were asked for
        double metres = 0;
        std::array<std::int64_t, usage::kPieces.size()> pieces{};
    };
    std::vector<Day> days;

    std::vector<std::vector<usage::HourWeight>> weightings;

    [[nodiscard]] double used(const DuePoint& point, const Need& need, std::size_t day) const;
    /// The day on which the point comes, or one beyond the last.
    [[nodiscard]] std::int32_t dayOf(const DuePoint& point, calendar::Date today) const;
};

class Simulation {
  public:
    explicit Simulation(const Ahead& ahead, std::uint64_t seed = 1,
                        std::vector<std::vector<usage::HourWeight>> weightings = {})
        : ahead_(ahead), weightings_(std::move(weightings)), random_(seed) {}
    Future future(std::int32_t days);

  private:
    struct Truth {  ///< the laws of one future, drawn from what is known of them
        double perWeek = 0, practice = 0, race = 0, metres = 0;
        std::array<double, usage::kPieces.size()> chances{};
        std::vector<double> practiceShares, raceShares;
    };
    Truth truth();
    double gamma(double shape);
    double meanOf(const AmountLaw& law);
    double chanceOf(const PieceLaw& law);
    std::vector<double> sharesOf(const GroundMix& mix);
    void bring(Future::Day& day, const Truth& truth, bool isRace);
    void ride(Future::Day& day, const Truth& truth, bool isRace);

    const Ahead ahead_;
    const std::vector<std::vector<usage::HourWeight>> weightings_;
    std::mt19937_64 random_;
};

}  // namespace wm::outlook::plain
