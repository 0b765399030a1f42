// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The joint chance to get to the flag. 2026-06-03 is a Wednesday.
#include "core/outlook/chances.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "tests/core/made.h"
#include "tests/core/outlook/plain_simulation.h"

namespace wm::outlook {
namespace {

using made::day;
using upkeep::Combine;
using upkeep::Consequence;
using upkeep::Counter;

Ahead rider() {
    Ahead ahead;
    ahead.today = day("2026-06-03");
    ahead.habitOutingsPerWeek = 1.5;
    ahead.weeksSeen = 12;
    ahead.practiceHours = {1.8, 0.4, 18};
    ahead.raceHours = {3.1, 0.25, 3};
    ahead.of(usage::Piece::Starts) = {2, 3};
    ahead.of(usage::Piece::Washes) = {0.7, 21};
    ahead.of(usage::Piece::MudDays) = {0.25, 21};
    ahead.washWithMud = 0.5;
    ahead.events = {{EventId{1}, "round one", EventKind::Race, day("2026-06-27"), day("2026-06-28")}};
    return ahead;
}

Watched task(std::int64_t id, Counter counter, std::int64_t left,
             Consequence consequence = Consequence::CostsMoney) {
    return {TaskId{id}, consequence, {Combine::First, {{counter, left}}}};
}

// By plain simulation: how often nothing comes up to the flag.
double simulated(const Ahead& ahead, const std::vector<Watched>& tasks, int futures) {
    std::vector<std::vector<usage::HourWeight>> weightings;
    for (const Watched& each : tasks)
        if (!each.point.weights.empty())
            weightings.push_back(each.point.weights);
    plain::Simulation simulation(ahead, 5, weightings);
    const std::int32_t until = flagOf(ahead) - ahead.today;
    int clear = 0;
    for (int i = 0; i < futures; ++i) {
        const auto future = simulation.future(until);
        bool falls = false;
        for (const Watched& each : tasks)
            falls = falls || future.dayOf(each.point, ahead.today) <= until;
        clear += falls ? 0 : 1;
    }
    return static_cast<double>(clear) / futures;
}

// Four standard errors of the simulation and of the draws.
double noise(int futures) {
    return 4 * std::sqrt(0.25 / futures + 0.25 / Draws{}.count);
}

TEST(LongChancesTest, TwentyTasksOnOneMeterHoldTogether) {
    // Twenty limits between 12 and 16 h on one meter: all hold just if the lowest does. The product of their
    // own chances is far lower.
    const Odds odds(rider());
    std::vector<Watched> tasks;
    double product = 1;
    for (std::int64_t i = 0; i < 20; ++i) {
        tasks.push_back(task(i + 1, Counter::Hours, 1600 - 20 * i));
        product *= 1 - odds.chanceBy(tasks.back().point, day("2026-06-28"));
    }
    const Chances chances = chancesOf(tasks, odds, flagOf(odds.ahead()));
    EXPECT_NEAR(*chances.clear, 1 - odds.chanceBy(tasks.back().point, day("2026-06-28")), 0.035);
    EXPECT_NEAR(*chances.clear, simulated(rider(), tasks, 20'000), noise(20'000));
    EXPECT_GT(*chances.clear, 0.2);
    EXPECT_LT(product, 0.01);
    EXPECT_EQ(chances.first, TaskId{20}) << "the one with the least left";
    EXPECT_EQ(chances.firstShare, 1);
    EXPECT_EQ(chances.inHand, 20);
}

TEST(LongChancesTest, AgreesWithPlainSimulationWhereMetersDiffer) {
    Watched last{
        TaskId{4}, Consequence::HiddenWear, {Combine::Last, {{Counter::Hours, 700}, {Counter::Washes, 4}}}};
    last.point.day = day("2026-06-20");
    Watched dated{TaskId{5}, Consequence::HiddenWear, {Combine::Last, {{Counter::Outings, 2}}}};
    dated.point.day = day("2026-06-25");
    const std::vector<Watched> tasks{task(1, Counter::Hours, 1500), task(2, Counter::Washes, 7),
                                     task(3, Counter::MudDays, 3), last};
    const Odds odds(rider());
    EXPECT_NEAR(*chancesOf(tasks, odds, flagOf(odds.ahead())).clear, simulated(rider(), tasks, 20'000),
                noise(20'000));
    for (const Watched& each : {last, dated}) {
        const std::vector<Watched> alone{each};
        EXPECT_NEAR(*chancesOf(alone, odds, flagOf(odds.ahead())).clear, simulated(rider(), alone, 20'000),
                    noise(20'000));
    }
}

TEST(LongChancesTest, TasksThatWeightTheirHoursShareThemWithThoseThatDont) {
    Ahead ahead = rider();
    ahead.practiceGround = {{{usage::Ground::Hard, usage::Pace::Unstated, 0.7},
                             {usage::Ground::Sand, usage::Pace::Unstated, 0.3}},
                            18};
    ahead.raceGround = {{{usage::Ground::Sand, usage::Pace::Race, 1}}, 3};
    Watched sand = task(2, Counter::Hours, 2000);
    sand.point.weights = {{usage::Ground::Sand, {}, 2000}};
    Watched race = task(3, Counter::Hours, 1700);
    race.point.weights = {{{}, usage::Pace::Race, 1500}, {usage::Ground::Hard, {}, 700}};
    const Odds odds(ahead);
    const auto clear = [&](const std::vector<Watched>& tasks) {
        const double reckoned = *chancesOf(tasks, odds, flagOf(ahead)).clear;
        EXPECT_NEAR(reckoned, simulated(ahead, tasks, 20'000), noise(20'000));
        return reckoned;
    };
    const double alone = clear({sand});
    EXPECT_LT(alone, 0.8);
    EXPECT_GT(alone, 0.2);
    EXPECT_LT(alone, clear({task(2, Counter::Hours, 2000)})) << "sand wears more";
    const double product = alone * clear({race}) * clear({task(1, Counter::Hours, 1500)});
    EXPECT_GT(clear({task(1, Counter::Hours, 1500), sand, race}), product + 0.05) << "they share the outings";
}

TEST(ChancesTest, AMuddyGroundIsAMudDay) {
    // Half of the riding in mud, and half of the days mud days: ten hours of mud (weighted a hundred times)
    // and a mud day come with one and the same outing.
    Ahead ahead = rider();
    ahead.of(usage::Piece::MudDays) = {0.5, 0};
    ahead.practiceGround = {
        {{usage::Ground::Mud, usage::Pace::Unstated, 0.5}, {usage::Ground::Hard, usage::Pace::Unstated, 0.5}},
        0};
    ahead.raceGround = ahead.practiceGround;
    Watched muddy = task(1, Counter::Hours, 2500);  // all that hard ground brings within the time is far less
    muddy.point.weights = {{usage::Ground::Mud, {}, 10'000}, {usage::Ground::Hard, {}, 1}};
    const Odds odds(ahead);
    const auto clear = [&](Watched beside) {
        return *chancesOf(std::vector{std::move(beside), task(2, Counter::MudDays, 1)}, odds, flagOf(ahead))
                    .clear;
    };
    const double both = clear(muddy);
    const double mudDays = clear(task(1, Counter::Hours, 1'000'000));  // never: but hours are drawn as well
    EXPECT_EQ(both, mudDays) << "no ground is muddy on a day without mud";
}

TEST(ChancesTest, ADateBeforeTheFlagIsCertain) {
    Watched dated{TaskId{1}, Consequence::CostsMoney, {}};
    dated.point.day = day("2026-06-10");
    const std::vector<Watched> tasks{dated, task(2, Counter::Hours, 5000, Consequence::SafetyEvident)};
    const Odds odds(rider());
    const Chances chances = chancesOf(tasks, odds, flagOf(odds.ahead()));
    EXPECT_EQ(chances.clear, 0);
    EXPECT_EQ(chances.first, TaskId{1});
    EXPECT_EQ(chances.firstShare, 1) << "50 h are not ridden within a week";
}

TEST(ChancesTest, OfTwoAtOnceTheGraverIsFirst) {
    const std::vector<Watched> tasks{task(1, Counter::Outings, 2, Consequence::HiddenWear),
                                     task(2, Counter::Outings, 2, Consequence::SafetyHidden)};
    const Odds odds(rider());
    EXPECT_EQ(chancesOf(tasks, odds, flagOf(odds.ahead())).first, TaskId{2});
}

TEST(ChancesTest, WithoutAHabitNobodySaysAFigure) {
    Ahead ahead = rider();
    ahead.trust = Trust::Unknown;
    const std::vector<Watched> tasks{task(1, Counter::Hours, 100)};
    EXPECT_FALSE(chancesOf(tasks, Odds(ahead), flagOf(ahead)).clear);
}

TEST(ChancesTest, NothingToWatchHolds) {
    const Odds odds(rider());
    const Chances chances = chancesOf({}, odds, flagOf(odds.ahead()));
    EXPECT_EQ(chances.clear, 1);
    EXPECT_FALSE(chances.first);
}

TEST(ChancesTest, TheRoundIsWhatComesEachTime) {
    EXPECT_TRUE(isOfTheRound(made::task({made::every(2, Counter::Outings)})));
    EXPECT_FALSE(isOfTheRound(made::task({made::every(3, Counter::Outings)})));
    upkeep::TaskVersion race = made::task({});
    race.triggers = {{upkeep::Happening::BeforeRace, {}}};
    EXPECT_TRUE(isOfTheRound(race));
}

TEST(StreamTest, DrawsWhatItSays) {
    // Means and variances: gamma(a) a and a; beta(2, 3) 2/5 and 1/25; exponential 1 and 1; normal 0 and 1.
    constexpr int kDraws = 40'000;
    const auto check = [](auto draw, double mean, double variance) {
        double sum = 0;
        double squares = 0;
        for (std::uint64_t i = 0; i < kDraws; ++i) {
            Stream stream(7, i);
            const double value = draw(stream);
            sum += value;
            squares += value * value;
        }
        const double seen = sum / kDraws;
        EXPECT_NEAR(seen, mean, 5 * std::sqrt(variance / kDraws));
        EXPECT_NEAR(squares / kDraws - seen * seen, variance, 0.08 * variance);
    };
    check([](Stream& s) { return s.uniform(); }, 0.5, 1.0 / 12);
    check([](Stream& s) { return s.exponential(); }, 1, 1);
    check([](Stream& s) { return s.normal(); }, 0, 1);
    check([](Stream& s) { return s.gamma(0.5); }, 0.5, 0.5);
    check([](Stream& s) { return s.gamma(6.2); }, 6.2, 6.2);
    check([](Stream& s) { return s.beta(2, 3); }, 0.4, 0.04);
}

// Any rider, any due point.
rc::Gen<Ahead> anyAhead() {
    return rc::gen::exec([] {
        Ahead ahead;
        ahead.today = day("2026-06-01").plusDays(*rc::gen::inRange(0, 7));
        ahead.weeksSeen = *rc::gen::inRange(1, 27);
        ahead.habitOutingsPerWeek = *rc::gen::inRange(0, 40) / 10.0;
        const auto amount = [] {
            return AmountLaw{*rc::gen::inRange(2, 60) / 10.0, *rc::gen::inRange(1, 9) / 10.0,
                             static_cast<double>(*rc::gen::inRange(1, 30))};
        };
        ahead.practiceHours = amount();
        ahead.raceHours = amount();
        ahead.of(usage::Piece::Washes) = {*rc::gen::inRange(0, 15) / 10.0, 10};
        ahead.of(usage::Piece::MudDays) = {*rc::gen::inRange(0, 11) / 10.0, 10};
        for (int i = *rc::gen::inRange(0, 4); i > 0; --i) {
            const auto first = ahead.today.plusDays(*rc::gen::inRange(1, 120));
            ahead = withEvent(ahead, {EventId{i}, "meeting",
                                      *rc::gen::arbitrary<bool>() ? EventKind::Race : EventKind::Practice,
                                      first, first.plusDays(*rc::gen::inRange(0, 3))});
        }
        return ahead;
    });
}

DuePoint anyPoint(std::int64_t more = 0) {
    DuePoint point;
    point.combine = *rc::gen::arbitrary<bool>() ? Combine::First : Combine::Last;
    point.needs = {{Counter::Hours, *rc::gen::inRange(1, 8000) + more}};
    if (*rc::gen::arbitrary<bool>())
        point.needs.push_back({Counter::Washes, *rc::gen::inRange(1, 20) + more});
    return point;
}

bool isNotLater(const std::optional<calendar::Date>& a, const std::optional<calendar::Date>& b) {
    return !b || (a && *a <= *b);
}

RC_GTEST_PROP(OddsProperty, AWindowIsInOrder, ()) {
    const Odds odds(*anyAhead());
    const Window window = odds.windowOf(anyPoint());
    RC_ASSERT(isNotLater(window.early, window.likely));
    RC_ASSERT(isNotLater(window.likely, window.late));
}

RC_GTEST_PROP(OddsProperty, MoreLeftComesNoSooner, ()) {
    const Odds odds(*anyAhead());
    DuePoint point = anyPoint();
    const Window window = odds.windowOf(point);
    for (Need& need : point.needs)
        need.left += *rc::gen::inRange(0, 500);
    const Window later = odds.windowOf(point);
    RC_ASSERT(isNotLater(window.early, later.early));
    RC_ASSERT(isNotLater(window.likely, later.likely));
    RC_ASSERT(isNotLater(window.late, later.late));
}

// An event takes the place of its week's habit, so a new one may make a week lighter. One more in a week that
// has one already, or outside any week of habit, only adds.
RC_GTEST_PROP(OddsProperty, OneMoreEventInItsWeekMakesNothingLater, ()) {
    const Ahead any = *anyAhead();
    const auto first = any.today.plusDays(*rc::gen::inRange(1, 120));
    const Ahead ahead = withEvent(any, {EventId{50}, "meeting", EventKind::Race, first, first.plusDays(1)});
    EventAhead more = ahead.events.front();
    more.id = EventId{99};
    const auto day = static_cast<std::int32_t>(*rc::gen::inRange(0, more.last - more.first + 1));
    more.first = more.last = more.first.plusDays(day);
    const DuePoint point = anyPoint();
    const Window window = Odds(ahead).windowOf(point);
    const Window sooner = Odds(withEvent(ahead, more)).windowOf(point);
    RC_ASSERT(isNotLater(sooner.early, window.early));
    RC_ASSERT(isNotLater(sooner.likely, window.likely));
    RC_ASSERT(isNotLater(sooner.late, window.late));
}

RC_GTEST_PROP(ChancesProperty, IsTheSameEachTimeAndWithinWhatTheTasksAllow, ()) {
    const Odds odds(*anyAhead());
    std::vector<Watched> tasks;
    for (std::int64_t id = 1; id <= *rc::gen::inRange(1, 6); ++id)
        tasks.push_back({TaskId{id}, Consequence::CostsMoney, anyPoint()});
    const Draws draws{1, 300};
    const auto until = flagOf(odds.ahead());
    const Chances chances = chancesOf(tasks, odds, until, draws);
    RC_ASSERT(chances.clear == chancesOf(tasks, Odds(odds.ahead()), until, draws).clear);
    for (const Watched& each : tasks)
        RC_ASSERT(*chances.clear <= 1 - odds.chanceBy(each.point, until));
}

}  // namespace
}  // namespace wm::outlook
