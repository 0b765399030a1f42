// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <vector>

namespace wm::outlook {

/// How many outings of habit lie in some free weeks: Poisson, its rate a week known (`weeks` = 0) or learned
/// from `weeks` in which `rate` was the mean. Learned, the rate is gamma with shape rate x weeks + 1/2 and
/// `weeks` as the inverse scale (Jeffreys' prior: half an outing in no time at all; so weak that five weeks
/// speak for themselves, and no week without riding says "never"), and the count negative binomial.
struct CountLaw {
    double rate = 0;
    double weeks = 0;
    [[nodiscard]] double shape() const { return rate * weeks + 0.5; }
    [[nodiscard]] bool isLearned() const { return weeks > 0; }
};

/// The hours or metres of one outing: gamma, with the coefficient of variation `spread`. The mean is known
/// exactly (`seen` = 0) or rests on so many outings; then its inverse is gamma too (Jeffreys' prior for a
/// scale), which widens every sum of outings to come.
struct AmountLaw {
    double mean = 0;
    double spread = 0;
    double seen = 0;
    [[nodiscard]] double shape() const;  ///< of the gamma of one outing
    [[nodiscard]] double sure() const;   ///< shape of the gamma of what is known of the mean
    [[nodiscard]] double lift() const;   ///< expected mean beside `mean`: an inverse gamma leans to the right
};

/// Pieces an outing (washes, mud, starts, crashes): of a mean of 1.4 one is certain and one more comes in
/// four outings of ten; of 1.0 one comes each time. The chance is known exactly (`seen` = 0) or rests on so
/// many outings; then it is beta with half a yes and half a no added (Jeffreys' prior).
struct PieceLaw {
    double mean = 0;
    double seen = 0;
    [[nodiscard]] std::int64_t certain() const;
    [[nodiscard]] double chance() const { return mean - static_cast<double>(certain()); }
    [[nodiscard]] double yes() const { return chance() * seen + 0.5; }
    [[nodiscard]] double no() const { return (1 - chance()) * seen + 0.5; }
};

/// The chances of `least`, `least` + 1 ... outings; what is left out at both ends is less than 1e-8.
struct Counts {
    int least = 0;
    std::vector<double> chance;
};
Counts countsIn(const CountLaw& law, double weeks);

/// Chance that `a` outings of one law and `b` of another come to less than `amount`. One law alone is exact
/// but for the cube-root approach to the F distribution (Paulson 1942, after Wilson and Hilferty 1931); two
/// are put together by mean and variance first. The tests state both errors.
double chanceOfLess(const AmountLaw& first, double a, const AmountLaw& second, double b, double amount);

/// Chance that m outings bring at least `need` pieces, for m = 0 .. `most`. Exact.
std::vector<double> chancesOfPieces(const PieceLaw& law, std::int64_t need, int most);

}  // namespace wm::outlook
