// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What comes with every outing, and what has run out beside it.
#include "core/book/round.h"

#include <gtest/gtest.h>

#include "tests/core/made.h"

namespace wm::book {
namespace {

using outlook::StandingKind;
using upkeep::Counter;

/// A battery: looked at before each race, charged every 20 h (2 h more allowed).
class Battery : public testing::Test {
  protected:
    upkeep::TaskVersion task = made::task({made::every("20")});
    DueLine line;

    void SetUp() override {
        task.triggers = {{upkeep::Happening::BeforeRace, {}}};
        line.task = &task;
    }
    void left(Counter counter, std::int64_t every, std::int64_t left) {
        upkeep::LimitState state;
        state.limit.counter = counter;
        state.limit.every = every;
        state.left = left;
        state.leftWithAllowance = left + (counter == Counter::Hours ? 200 : 0);
        line.countdown.limits.push_back(state);
    }
};

TEST_F(Battery, IsOfTheRoundWhileItsIntervalHolds) {
    left(Counter::Hours, 2000, 600);
    line.standing.kind = StandingKind::BeforeEvent;
    EXPECT_TRUE(isOnlyOfTheRound(line));
    line.countdown.limits[0].left = -100;
    line.countdown.limits[0].leftWithAllowance = 100;
    EXPECT_TRUE(isOnlyOfTheRound(line)) << "within what is allowed";
}

TEST_F(Battery, IsAJobOnceItsIntervalHasRunOut) {
    left(Counter::Hours, 2000, -1020);
    line.standing.kind = StandingKind::Overdue;
    EXPECT_FALSE(isOnlyOfTheRound(line));
}

TEST_F(Battery, AnOutingMissedMakesNoJobOfTheRound) {
    task = made::task({made::every(1, Counter::Outings)});
    left(Counter::Outings, 1, -1);
    line.standing.kind = StandingKind::Overdue;
    EXPECT_TRUE(isOnlyOfTheRound(line));
    task = made::task({made::every("20")});
    EXPECT_FALSE(isOnlyOfTheRound(line)) << "a task of hours alone is no round";
}

}  // namespace
}  // namespace wm::book
