// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/outlook/laws.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace wm::outlook {

namespace {

constexpr double kLeastSpread = 0.01;
constexpr double kNegligible = 1e-10;  // beside the likeliest count

// Chance of one outing of habit more, beside that of n.
double stepUp(const CountLaw& law, double weeks, int n) {
    return law.isLearned() ? (law.shape() + n) / (n + 1) * weeks / (law.weeks + weeks)
                           : law.rate * weeks / (n + 1);
}

int likeliestCount(const CountLaw& law, double weeks) {
    return static_cast<int>(law.isLearned() ? std::max(law.shape() - 1, 0.0) * weeks / law.weeks
                                            : law.rate * weeks);
}

double normalBelow(double z) {
    return 0.5 * std::erfc(-z * 0.70710678118654752440);
}

// Chance of exactly `yes` of n, all in one given order: the whole pieces of a beta-binomial.
double chanceOfYes(const PieceLaw& law, std::int64_t yes) {
    if (law.seen <= 0)
        return std::pow(law.chance(), static_cast<double>(yes));
    double chance = 1;
    for (std::int64_t i = 0; i < yes; ++i)
        chance *= (law.yes() + static_cast<double>(i)) / (law.yes() + law.no() + static_cast<double>(i));
    return chance;
}

// Chance that the n-th outing after `n` of them, `yes` of which brought a piece, brings none.
double chanceOfNo(const PieceLaw& law, std::int64_t n, std::int64_t yes) {
    if (law.seen <= 0)
        return 1 - law.chance();
    return (law.no() + static_cast<double>(n - yes)) / (law.yes() + law.no() + static_cast<double>(n));
}

// Chance that the need-th piece has come within m outings, m = 0 .. most: the waiting times add up.
std::vector<double> waits(const PieceLaw& law, std::int64_t need, int most) {
    std::vector<double> chances(static_cast<std::size_t>(most) + 1, need <= 0 ? 1.0 : 0.0);
    if (need <= 0 || need > most)
        return chances;
    double atM = chanceOfYes(law, need);
    double upToM = 0;
    for (std::int64_t m = need; m <= most; ++m) {
        upToM += atM;
        chances[static_cast<std::size_t>(m)] = std::min(upToM, 1.0);
        atM *= static_cast<double>(m) / static_cast<double>(m - need + 1) * chanceOfNo(law, m, need);
    }
    return chances;
}

}  // namespace

double AmountLaw::shape() const {
    const double cv = std::max(spread, kLeastSpread);
    return 1 / (cv * cv);
}

double AmountLaw::sure() const {
    return seen > 0 ? seen * shape() : std::numeric_limits<double>::infinity();
}

double AmountLaw::lift() const {
    return sure() > 2 ? 1 / (1 - 1 / sure()) : 2;
}

std::int64_t PieceLaw::certain() const {
    return std::max<std::int64_t>(static_cast<std::int64_t>(std::ceil(mean)) - 1, 0);
}

Counts countsIn(const CountLaw& law, double weeks) {
    const int mode = likeliestCount(law, weeks);
    std::vector<double> below;
    double sum = 0;
    double each = 1;
    for (int n = mode; n > 0; --n) {
        each /= stepUp(law, weeks, n - 1);
        if (each < kNegligible)
            break;
        below.push_back(each);
        sum += each;
    }
    Counts counts{mode - static_cast<int>(below.size()), {below.rbegin(), below.rend()}};
    each = 1;
    for (int n = mode; each >= kNegligible; ++n) {
        counts.chance.push_back(each);
        sum += each;
        each *= stepUp(law, weeks, n);
    }
    for (double& chance : counts.chance)
        chance /= sum;
    return counts;
}

double chanceOfLess(const AmountLaw& first, double a, const AmountLaw& second, double b, double amount) {
    const double firstMean = a * first.mean;
    const double secondMean = b * second.mean;
    double mean = firstMean + secondMean;
    if (mean <= 0)
        return amount > 0 ? 1 : 0;
    if (amount <= 0)
        return 0;
    // Relative variances of what the outings bring, and of what is known of their means. A gamma of shape s
    // about its mean has 1/s; its cube root is nearly normal about 1 - 1/(9s) with the variance 1/(9s).
    const double outings =
        (firstMean * first.mean / first.shape() + secondMean * second.mean / second.shape()) / (mean * mean);
    const double known =
        (firstMean * firstMean / first.sure() + secondMean * secondMean / second.sure()) / (mean * mean);
    if (firstMean > 0 && secondMean > 0)
        mean = (firstMean * first.lift() + secondMean * second.lift()) * (1 - known);
    const double ratio = std::cbrt(amount / mean);
    return normalBelow((ratio * (1 - known / 9) - (1 - outings / 9)) /
                       std::sqrt(ratio * ratio * known / 9 + outings / 9));
}

std::vector<double> chancesOfPieces(const PieceLaw& law, std::int64_t need, int most) {
    const std::int64_t certain = law.certain();
    if (certain == 0)
        return waits(law, need, most);
    std::vector<double> chances(static_cast<std::size_t>(most) + 1, 1.0);
    for (int m = 0; m <= most; ++m) {
        const std::int64_t more = need - certain * m;
        if (more <= 0)
            break;
        chances[static_cast<std::size_t>(m)] = waits(law, more, m).back();
    }
    return chances;
}

}  // namespace wm::outlook
