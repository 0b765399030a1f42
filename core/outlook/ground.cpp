// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/outlook/ground.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <tuple>

#include "core/usage/exposure.h"

namespace wm::outlook {

namespace {

double weightOf(std::span<const usage::HourWeight> weights, const GroundMix::Part& part) {
    return static_cast<double>(usage::permilleOf(weights, part.ground, part.pace)) / 1000;
}

// The mean of the weights, or of their squares.
double meanPower(const GroundMix& mix, std::span<const usage::HourWeight> weights, int power) {
    if (mix.parts.empty())
        return std::pow(weightOf(weights, {}), power);
    return std::accumulate(mix.parts.begin(), mix.parts.end(), 0.0,
                           [&](double sum, const GroundMix::Part& part) {
                               return sum + part.share * std::pow(weightOf(weights, part), power);
                           });
}

}  // namespace

void GroundMix::add(usage::Ground ground, usage::Pace pace, double amount) {
    for (Part& part : parts)
        if (part.ground == ground && part.pace == pace) {
            part.share += amount;
            return;
        }
    parts.push_back({ground, pace, amount});
}

void GroundMix::settle() {
    const double all = std::accumulate(parts.begin(), parts.end(), 0.0,
                                       [](double sum, const Part& part) { return sum + part.share; });
    for (Part& part : parts)
        part.share = all > 0 ? part.share / all : 1 / static_cast<double>(parts.size());
    std::sort(parts.begin(), parts.end(), [](const Part& a, const Part& b) {
        const auto order = [](const Part& part) {
            return std::tuple(!usage::isMuddy(part.ground), part.ground, part.pace);
        };
        return order(a) < order(b);
    });
}

double meanWeight(const GroundMix& mix, std::span<const usage::HourWeight> weights) {
    return meanPower(mix, weights, 1);
}

AmountLaw weightedLaw(const AmountLaw& hours, const GroundMix& mix,
                      std::span<const usage::HourWeight> weights) {
    if (weights.empty())
        return hours;
    const double mean = meanWeight(mix, weights);
    const double uneven = std::max(meanPower(mix, weights, 2) / (mean * mean) - 1, 0.0);
    const double variance = (1 + 1 / hours.shape()) * (1 + uneven) - 1;
    AmountLaw law{hours.mean * mean, std::sqrt(variance), 0};
    // What is not known of the mean: of its hours, and of the shares (the variance of a Dirichlet mean).
    const double unknown = 1 / hours.sure() + (mix.seen > 0 ? uneven / (mix.seen + 1) : 0);
    if (unknown > 0)
        law.seen = 1 / (unknown * law.shape());
    return law;
}

}  // namespace wm::outlook
