// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/standing_words.h"

#include <gtest/gtest.h>

#include "ui/words/chance_words.h"
#include "ui/words/figures.h"

namespace wm::ui {
namespace {

upkeep::LimitState overBy(std::int64_t by, std::int64_t allowance) {
    upkeep::LimitState state;
    state.limit.counter = upkeep::Counter::Hours;
    state.left = -by;
    state.leftWithAllowance = allowance - by;
    state.behind = {1000 + by, 1000 + by, 1000 + by};
    return state;
}

TEST(HowFar, SaysWhetherWhatIsOverIsStillAllowed) {
    const calendar::Date today;
    EXPECT_EQ(howFar(overBy(290, 0), today), "over 2.9 h");
    EXPECT_EQ(howFar(overBy(290, 289), today), "over 2.9 h");
    EXPECT_EQ(howFar(overBy(290, 290), today), "over 2.9 h, allowed");
    EXPECT_EQ(howFar(overBy(290, 500), today), "over 2.9 h, allowed");
    auto days = overBy(0, 0);
    days.dueOn = today.plusDays(-4);
    days.leftWithAllowance = -1;
    EXPECT_EQ(howFar(days, today), "over 4 days");
    days.leftWithAllowance = 3;
    EXPECT_EQ(howFar(days, today), "over 4 days, allowed");
}

// Nobody knows how much more is behind it.
TEST(HowFar, AnOpenHighEndIsOverByThatOrMore) {
    auto limit = overBy(290, 0);
    limit.reached = upkeep::Reached::Yes;
    limit.behind = {1290, 1290, std::nullopt};
    EXPECT_EQ(howFar(limit, {}), "over 2.9 h or more");
    limit.raw = upkeep::CountBracket{1000, 1000, std::nullopt};
    EXPECT_EQ(howFar(limit, {}), "over 2.9 h or more, 10.0 h or more as ridden");
    limit.raw->high = 1000;
    EXPECT_EQ(howFar(limit, {}), "over 2.9 h or more, 10.0 h as ridden");
}

TEST(BracketWords, SayAnOpenHighEndOnce) {
    EXPECT_EQ(bracketWords({4500, 4500, std::nullopt}, upkeep::Counter::Hours), "45.0 h or more");
    EXPECT_EQ(bracketWords({4000, 4500, std::nullopt}, upkeep::Counter::Hours), "45.0 h (40.0 h or more)");
    const usage::HoursBracket exact{units::Hours{4500}, units::Hours{4500}, std::nullopt};
    EXPECT_EQ(hoursWords(exact), "45.0 h or more");
    EXPECT_EQ(shortHoursWords(exact), "45.0 h or more");
    const usage::HoursBracket open{units::Hours{4000}, units::Hours{4500}, std::nullopt};
    EXPECT_EQ(hoursWords(open), "45.0 h (40.0 or more)");
    EXPECT_EQ(shortHoursWords(open), "40.0 h or more");
    const usage::HoursBracket nobodyKnows{units::Hours{0}, units::Hours{6178}, std::nullopt};
    EXPECT_EQ(shortHoursWords(nobodyKnows), "~61.8 h");
    const usage::HoursBracket about{units::Hours{4000}, units::Hours{6178}, units::Hours{8000}};
    EXPECT_EQ(shortHoursWords(about), "~61.8 h");
    EXPECT_EQ(shortHoursWords({units::Hours{6178}, units::Hours{6178}, units::Hours{6178}}), "61.78 h");
}

TEST(ClearWords, SayWhatIsDueAndHowSurelyNoMoreIs) {
    outlook::Chances chances;
    EXPECT_EQ(clearWords(chances), "too few outings known to say what comes");
    chances.dueNow = 6;
    EXPECT_EQ(clearWords(chances), "6 due now; too few outings known to say what comes");
    chances.clear = 0.01;
    chances.clearOfRest = 0.71;
    EXPECT_EQ(clearWords(chances), "6 due now");
    chances.inHand = 3;
    EXPECT_EQ(clearWords(chances), "6 due now; with these done, nothing else: 71 %");
    chances.beforeEvent = 4;
    EXPECT_EQ(clearWords(chances), "6 due now, 4 in 2 weeks; with these done, nothing else: 71 %");
    chances.event.emplace();
    EXPECT_EQ(clearWords(chances), "6 due now, 4 before the flag; with these done, nothing else: 71 %");
    chances.dueNow = chances.beforeEvent = 0;
    EXPECT_EQ(clearWords(chances), "nothing due before the flag: 71 %");
    chances.inHand = 0;
    EXPECT_EQ(clearWords(chances), "nothing is watched");
    chances.noRecord = 83;
    EXPECT_EQ(clearWords(chances), "nothing recorded to go by");
}

TEST(PickedWords, SayWhatIsLeftWithThemDone) {
    outlook::Chances chances;
    EXPECT_EQ(pickedWords(chances), "");
    chances.picked = 4;
    chances.event.emplace();
    chances.leftOver = 2;
    chances.leftBefore = 3;
    EXPECT_EQ(pickedWords(chances), "4 picked, 5 left to do");
    chances.leftOver = 0;
    EXPECT_EQ(pickedWords(chances), "4 picked, 3 left to do");
    chances.leftBefore = 0;
    chances.clearOfUnpicked = 0.71;
    chances.picked = 1;
    EXPECT_EQ(pickedWords(chances), "1 picked, nothing else: 71 %");
}

}  // namespace
}  // namespace wm::ui
