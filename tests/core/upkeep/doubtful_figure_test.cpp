// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/upkeep/doubtful_figure.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

namespace wm::upkeep {
namespace {

using units::Decimal;

std::vector<Limit> only(Counter counter, std::int64_t every) {
    return {{.counter = counter, .every = every}};
}

TEST(DoubtfulInterval, TenTimesWhatStoodThereIsAsked) {
    for (const std::int64_t every : {15'000, 150}) {
        const auto doubt = doubtAbout(only(Counter::Hours, every), only(Counter::Hours, 1500));
        ASSERT_TRUE(doubt) << every;
        EXPECT_EQ(doubt->misreading, Misreading::DecimalPoint);
        EXPECT_EQ(doubt->meant.every, 1500);
    }
    EXPECT_FALSE(doubtAbout(only(Counter::Hours, 2000), only(Counter::Hours, 1500)));
    EXPECT_FALSE(doubtAbout(only(Counter::Hours, 1500), only(Counter::Hours, 1500)));
}

TEST(DoubtfulInterval, TheSameNumberOfSomethingElseIsAsked) {
    const auto kilometres = doubtAbout(only(Counter::Metres, 15'000), only(Counter::Hours, 1500));
    ASSERT_TRUE(kilometres);
    EXPECT_EQ(kilometres->misreading, Misreading::OtherUnit);
    EXPECT_EQ(kilometres->meant, (Limit{.counter = Counter::Hours, .every = 1500}));
    const auto days = doubtAbout(only(Counter::Days, 6), only(Counter::Months, 6));
    ASSERT_TRUE(days);
    EXPECT_EQ(days->meant.counter, Counter::Months);
    // Half a year in days is no misreading.
    EXPECT_FALSE(doubtAbout(only(Counter::Days, 180), only(Counter::Months, 6)));
}

TEST(DoubtfulInterval, WithoutAnythingToHoldItAgainstTheFarOnesAreAsked) {
    const auto hours = doubtAbout(only(Counter::Hours, 150'000), {});
    ASSERT_TRUE(hours);
    EXPECT_EQ(hours->meant, (Limit{.counter = Counter::Metres, .every = 1'500'000}));
    const auto near = doubtAbout(only(Counter::Metres, 20'000), {});
    ASSERT_TRUE(near);
    EXPECT_EQ(near->meant, (Limit{.counter = Counter::Hours, .every = 2000}));
    const auto months = doubtAbout(only(Counter::Months, 90), {});
    ASSERT_TRUE(months);
    EXPECT_EQ(months->meant, (Limit{.counter = Counter::Days, .every = 90}));
    EXPECT_FALSE(doubtAbout(only(Counter::Hours, 10'000), {}));
    EXPECT_FALSE(doubtAbout(only(Counter::Metres, 1'000'000), {}));
    EXPECT_FALSE(doubtAbout({}, only(Counter::Hours, 10)));
}

// The other limits of an interval do not hide the one that is off.
TEST(DoubtfulInterval, EachLimitIsLookedAt) {
    const std::vector<Limit> typed{{.counter = Counter::Hours, .every = 1500},
                                   {.counter = Counter::Months, .every = 60}};
    const std::vector<Limit> stood{{.counter = Counter::Months, .every = 6},
                                   {.counter = Counter::Hours, .every = 1500}};
    const auto doubt = doubtAbout(typed, stood);
    ASSERT_TRUE(doubt);
    EXPECT_EQ(doubt->typed.counter, Counter::Months);
}

TEST(DoubtfulAmount, LitresForMillilitresAndOneSideForBoth) {
    const auto thousand = doubtAbout(1, 850, Unit::Millilitre);
    ASSERT_TRUE(thousand);
    EXPECT_EQ(thousand->meant, 1000);
    EXPECT_EQ(thousand->misreading, Misreading::Thousand);
    EXPECT_EQ(doubtAbout(850'000, 850, Unit::Millilitre)->meant, 850);
    EXPECT_EQ(doubtAbout(8500, 850, Unit::Millilitre)->misreading, Misreading::DecimalPoint);
    const auto both = doubtAbout(700, 350, Unit::Millilitre);
    ASSERT_TRUE(both);
    EXPECT_EQ(both->misreading, Misreading::BothSides);
    EXPECT_EQ(both->meant, 350);
    EXPECT_EQ(doubtAbout(345, 700, Unit::Millilitre)->misreading, Misreading::BothSides);
    EXPECT_EQ(doubtAbout(4, 2, Unit::Piece)->misreading, Misreading::BothSides);
    EXPECT_FALSE(doubtAbout(2000, 2, Unit::Piece)) << "a thousand pieces are no litre";
    EXPECT_FALSE(doubtAbout(900, 850, Unit::Millilitre));
    EXPECT_FALSE(doubtAbout(0, 850, Unit::Millilitre));
    EXPECT_FALSE(doubtAbout(-5, 850, Unit::Millilitre));
}

MeasurePoint point(std::optional<Decimal> least, std::optional<Decimal> most) {
    return {.name = "gap", .unit = "mm", .least = least, .most = most};
}

TEST(DoubtfulLimit, APointInTheWrongPlaceAndInchesAreAsked) {
    const auto ten = doubtAbout(point({}, Decimal{8, 0}), point({}, Decimal{80, 2}));
    ASSERT_TRUE(ten);
    EXPECT_EQ(ten->misreading, Misreading::DecimalPoint);
    EXPECT_EQ(ten->meant.text(), "0.8");
    EXPECT_EQ(doubtAbout(point({}, Decimal{8, 2}), point({}, Decimal{80, 2}))->meant.text(), "0.8");
    const auto inches = doubtAbout(point({}, Decimal{31, 3}), point({}, Decimal{80, 2}));
    ASSERT_TRUE(inches);
    EXPECT_EQ(inches->misreading, Misreading::Inches);
    EXPECT_EQ(inches->meant.text(), "0.80");
    EXPECT_FALSE(doubtAbout(point({}, Decimal{85, 2}), point({}, Decimal{80, 2})));
}

TEST(DoubtfulLimit, EndsThatLieFarApartAreAskedEvenOfABlank) {
    const auto far = doubtAbout(point(Decimal{10, 2}, Decimal{15, 1}), point({}, {}));
    ASSERT_TRUE(far);
    EXPECT_EQ(far->typed.text(), "1.5");
    EXPECT_EQ(far->meant.text(), "0.15");
    EXPECT_FALSE(doubtAbout(point(Decimal{10, 2}, Decimal{15, 2}), point({}, {})));
    EXPECT_FALSE(doubtAbout(point(Decimal{0, 0}, Decimal{5, 0}), point({}, {}))) << "from nothing to 5";
    EXPECT_FALSE(doubtAbout(point(Decimal{-1, 0}, Decimal{5, 0}), point({}, {})));
}

TEST(DoubtfulFigure, WhatStandsThereAlreadyIsNeverDoubtful) {
    EXPECT_TRUE(rc::check("a figure against itself", [] {
        const auto amount = *rc::gen::inRange<std::int64_t>(1, 1'000'000);
        const auto unit = static_cast<Unit>(*rc::gen::inRange(0, 3));
        RC_ASSERT(!doubtAbout(amount, amount, unit));
        const auto counter = static_cast<Counter>(*rc::gen::inRange(0, 9));
        RC_ASSERT(!doubtAbout(only(counter, amount), only(counter, amount)));
        const Decimal value{amount, *rc::gen::inRange(0, 4)};
        RC_ASSERT(!doubtAbout(point({}, value), point({}, value)));
    }));
}

TEST(DoubtfulFigure, ARoundFactorIsAskedBothWays) {
    EXPECT_TRUE(rc::check("ten times and a tenth", [] {
        const auto amount = *rc::gen::inRange<std::int64_t>(1, 100'000);
        RC_ASSERT(doubtAbout(amount * 10, amount, Unit::Gram)->meant == amount);
        RC_ASSERT(doubtAbout(amount, amount * 10, Unit::Gram)->meant == amount * 10);
        RC_ASSERT(doubtAbout(amount * 1000, amount, Unit::Gram)->misreading == Misreading::Thousand);
        RC_ASSERT(doubtAbout(only(Counter::Hours, amount * 10), only(Counter::Hours, amount)).has_value());
    }));
}

}  // namespace
}  // namespace wm::upkeep
