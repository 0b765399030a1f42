// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The laws against closed forms. Reference: Boost.Math 1.74 (distributions gamma, Poisson, negative binomial,
// Fisher F, beta) - a library of its own, used here and not in the program.
#include "core/outlook/laws.h"

#include <gtest/gtest.h>

#include <boost/math/distributions/fisher_f.hpp>
#include <boost/math/distributions/gamma.hpp>
#include <boost/math/distributions/negative_binomial.hpp>
#include <boost/math/distributions/poisson.hpp>
#include <boost/math/special_functions/beta.hpp>
#include <boost/math/special_functions/binomial.hpp>

namespace wm::outlook {
namespace {

TEST(CountLawTest, AKnownRateIsPoisson) {
    for (const double mean : {0.01, 0.7, 3.0, 40.0, 300.0}) {
        const Counts counts = countsIn({mean / 2, 0}, 2);
        const boost::math::poisson_distribution<> poisson(mean);
        for (std::size_t i = 0; i < counts.chance.size(); ++i)
            EXPECT_NEAR(counts.chance[i], boost::math::pdf(poisson, counts.least + static_cast<double>(i)),
                        1e-8)
                << mean;
    }
    EXPECT_EQ(countsIn({}, 10).chance, std::vector<double>{1}) << "no habit, no outing";
}

TEST(CountLawTest, ALearnedRateIsNegativeBinomial) {
    // Boost counts failures before the r-th success, success = weeks seen / (weeks seen + weeks ahead).
    for (const double rate : {0.0, 0.4, 2.0})
        for (const double seen : {1.0, 5.0, 26.0})
            for (const double weeks : {1.0 / 7, 4.0, 104.0}) {
                const CountLaw law{rate, seen};
                const Counts counts = countsIn(law, weeks);
                const boost::math::negative_binomial_distribution<> negative(law.shape(),
                                                                             seen / (seen + weeks));
                for (std::size_t i = 0; i < counts.chance.size(); ++i)
                    EXPECT_NEAR(counts.chance[i],
                                boost::math::pdf(negative, counts.least + static_cast<double>(i)), 1e-8);
            }
}

TEST(AmountLawTest, SumsOfWholeShapeArePoissonSums) {
    // The spread 1/2 is a gamma of shape 4: n outings have come to less than x just if a Poisson count of
    // mean 4 x / mean is under 4 n no more often than that (Erlang). Error of the cube root: below 0.002.
    const AmountLaw law{1.5, 0.5, 0};
    double worst = 0;
    for (int n = 1; n <= 40; ++n)
        for (double x = 0.25; x < 120; x *= 1.2) {
            const double exact =
                1 - boost::math::cdf(boost::math::poisson_distribution<>(4 * x / 1.5), 4 * n - 1);
            worst = std::max(worst, std::abs(chanceOfLess(law, n, {}, 0, x) - exact));
        }
    EXPECT_LT(worst, 0.002);
    RecordProperty("worst", std::to_string(worst));
}

TEST(AmountLawTest, AnUnknownMeanMakesTheSumAnFRatio) {
    // n outings beside the 5 or 30 that are known: F with 2 x shape x n and 2 x shape x seen degrees.
    double worst = 0;
    for (const double spread : {0.2, 0.35, 0.5, 0.7})
        for (const double seen : {1.0, 3.0, 5.0, 30.0}) {
            const AmountLaw law{2, spread, seen};
            for (int n = 1; n <= 40; ++n)
                for (double ratio = 0.2; ratio < 5; ratio *= 1.15) {
                    const boost::math::fisher_f_distribution<> f(2 * law.shape() * n, 2 * law.sure());
                    worst = std::max(worst, std::abs(chanceOfLess(law, n, {}, 0, 2 * n * ratio) -
                                                     boost::math::cdf(f, ratio)));
                }
        }
    EXPECT_LT(worst, 0.006);
    RecordProperty("worst", std::to_string(worst));
}

TEST(PieceLawTest, AKnownChanceIsBinomial) {
    const auto chances = chancesOfPieces({0.3, 0}, 4, 60);
    for (int m = 0; m <= 60; ++m) {
        const double exact = m < 4 ? 0 : boost::math::ibeta(4, m - 3, 0.3);
        EXPECT_NEAR(chances[static_cast<std::size_t>(m)], exact, 1e-12) << m;
    }
    const auto always = chancesOfPieces({1, 0}, 3, 5);
    EXPECT_EQ(always, (std::vector<double>{0, 0, 0, 1, 1, 1}));
}

TEST(PieceLawTest, ALearnedChanceIsBetaBinomial) {
    // Three washes in ten outings: beta(3.5, 7.5). At least 4 in m = 1 - sum of C(m,j) B(j+3.5, m-j+7.5) /
    // B(3.5, 7.5) over j < 4.
    using boost::math::beta;
    const auto chances = chancesOfPieces({0.3, 10}, 4, 60);
    for (unsigned m = 4; m <= 60; ++m) {
        double less = 0;
        for (unsigned j = 0; j < 4; ++j)
            less +=
                boost::math::binomial_coefficient<double>(m, j) * beta(j + 3.5, m - j + 7.5) / beta(3.5, 7.5);
        EXPECT_NEAR(chances[m], 1 - less, 1e-10) << m;
    }
}

TEST(PieceLawTest, OneIsCertainAndOneMoreComesSometimes) {
    // 1.4 starts a race: five within three races = two more of three, 3 x 0.4^2 x 0.6 + 0.4^3.
    const auto chances = chancesOfPieces({1.4, 0}, 5, 5);
    EXPECT_NEAR(chances[3], 3 * 0.16 * 0.6 + 0.064, 1e-12);
    EXPECT_EQ(chances[2], 0);
    EXPECT_EQ(chances[5], 1);
}

}  // namespace
}  // namespace wm::outlook
