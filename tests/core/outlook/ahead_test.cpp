// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The look ahead: habit, means, standings. 2026-06-01 is a Monday.
#include "core/outlook/odds.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/core/made.h"

namespace wm::outlook {
namespace {

using made::day;
using made::Made;
using upkeep::Counter;

constexpr MachineId kMachine{77};

Event event(std::int64_t id, std::string_view first, std::string_view last,
            EventKind kind = EventKind::Race) {
    Event made;
    made.id = EventId{id};
    made.name = "meeting";
    made.kind = kind;
    made.first = day(first);
    made.last = day(last);
    made.entries = {{kMachine, std::nullopt}};
    return made;
}

class AheadTest : public testing::Test {
  protected:
    Made make;
    usage::UseFacts use;
    std::vector<Event> events;

    // One outing on the Saturday of each of `count` weeks from `first` (a Saturday) on.
    void saturdays(std::string_view first, int count, std::string_view noted = "2") {
        for (int i = 0; i < count; ++i)
            use.outings.push_back(make.outing(day(first).plusDays(7 * i).iso(), noted));
    }
    Ahead ahead(std::string_view today) { return aheadOf(kMachine, usage::atomsOf(use), events, day(today)); }
};

TEST_F(AheadTest, HoldsTheEnteredEventsAheadInOrder) {
    events = {event(1, "2026-06-20", "2026-06-21"), event(2, "2026-06-06", "2026-06-07"),
              event(3, "2026-05-30", "2026-05-31"), event(4, "2026-06-13", "2026-06-14"),
              event(5, "2026-06-14", "2026-06-14")};
    events[3].calledOff = true;
    events[4].entries[0].machine = MachineId{78};
    const auto seen = ahead("2026-06-07");
    ASSERT_EQ(seen.events.size(), 2U);
    EXPECT_EQ(seen.events[0].id, EventId{2}) << "its second day is today";
    EXPECT_EQ(seen.events[1].id, EventId{1});
    EXPECT_EQ(seen.events[1].last, day("2026-06-21"));
}

TEST_F(AheadTest, LearnsTheHabitFromWeeksWithoutAnEvent) {
    // Ridden on ten Saturdays from 21 March to 23 May, 2 h each; the week of the race on 16 May is left out,
    // the last week (25 to 31 May) was idle: 9 outings in 10 weeks.
    saturdays("2026-03-21", 10);
    events = {event(1, "2026-05-16", "2026-05-16")};
    const auto seen = ahead("2026-06-03");
    EXPECT_EQ(seen.weeksSeen, 10);
    EXPECT_DOUBLE_EQ(seen.habitOutingsPerWeek, 0.9);
    EXPECT_DOUBLE_EQ(seen.practiceHours.mean, 2);
}

TEST_F(AheadTest, TheCurrentWeekIsNotWhole) {
    saturdays("2026-05-16", 3);  // 16, 23 and 30 May
    EXPECT_EQ(ahead("2026-05-31").weeksSeen, 2) << "on a Sunday the week is not over";
    EXPECT_EQ(ahead("2026-06-01").weeksSeen, 3);
    EXPECT_DOUBLE_EQ(ahead("2026-06-01").habitOutingsPerWeek, 1);
}

TEST_F(AheadTest, AWinterIsNoHabit) {
    // 8 weeks of riding up to 31 October, then nothing up to 1 March: 16 idle weeks are a pause.
    saturdays("2025-09-06", 9);
    EXPECT_DOUBLE_EQ(ahead("2026-03-02").habitOutingsPerWeek, 1);
    EXPECT_EQ(ahead("2026-03-02").weeksSeen, 9);
    // Seven idle weeks are slack, not a pause: 9 in 16.
    EXPECT_DOUBLE_EQ(ahead("2025-12-22").habitOutingsPerWeek, 9.0 / 16);
    EXPECT_DOUBLE_EQ(ahead("2025-12-29").habitOutingsPerWeek, 1);
}

TEST_F(AheadTest, AnEventIsRidingAndEndsAPause) {
    saturdays("2026-03-07", 1);
    events = {event(1, "2026-04-11", "2026-04-11")};
    // 9 March to 5 April: 4 idle weeks, the event's week, then 5 idle weeks to 17 May: no pause; 1 in 10.
    EXPECT_DOUBLE_EQ(ahead("2026-05-18").habitOutingsPerWeek, 0.1);
}

TEST_F(AheadTest, OnlyTheNewestHalfYearOfWeeksCounts) {
    // 20 weeks with two outings, then 26 with one.
    saturdays("2025-07-19", 46);
    saturdays("2025-07-19", 20);
    EXPECT_DOUBLE_EQ(ahead("2026-06-01").habitOutingsPerWeek, 1);
    EXPECT_EQ(ahead("2026-06-01").weeksSeen, 26);
    EXPECT_DOUBLE_EQ(ahead("2026-05-25").habitOutingsPerWeek, 27.0 / 26);
}

TEST_F(AheadTest, NothingOlderThanAYearCounts) {
    saturdays("2024-01-06", 10, "9");
    const auto seen = ahead("2026-06-01");
    EXPECT_EQ(seen.weeksSeen, 0);
    EXPECT_EQ(seen.habitOutingsPerWeek, 0);
    EXPECT_EQ(meanUse(seen, Counter::Hours, day("2027-06-01")), 0);
}

TEST_F(AheadTest, UnloggedHoursAreOutingsOfMeanLength) {
    // 4 weeks, 1 outing of 2 h and 6 h unlogged over the other three weeks: (1 + 6 / 2) / 4 = 1 a week.
    saturdays("2026-05-09", 1);
    use.hourReadings = {make.reading("2026-05-10", "10"), make.reading("2026-05-31", "16")};
    EXPECT_DOUBLE_EQ(ahead("2026-06-01").habitOutingsPerWeek, 1);
    // With readings alone an outing is taken as 2 h: 6 h in 3 weeks are one a week, 2 h a week.
    use.outings.clear();
    const auto seen = ahead("2026-06-01");
    EXPECT_EQ(seen.weeksSeen, 4) << "the week of the first reading too";
    EXPECT_DOUBLE_EQ(seen.habitOutingsPerWeek * seen.practiceHours.mean, 1.5);
}

TEST_F(AheadTest, LearnsWhatAnOutingIs) {
    // Two practices of 1 and 2 h, two races: 3 h with 2 starts, and 5 h on a race day without any start
    // noted.
    use.outings = {make.outing("2026-05-02", "1"), make.outing("2026-05-09", "2", usage::Ground::Mud),
                   make.race("2026-05-16", "3", 2), make.outing("2026-05-23", "5")};
    use.outings[0].distance = made::km("20");
    use.outings[1].distance = made::km("60");
    use.washes = {make.wash("2026-05-09"), make.wash("2026-05-16"), make.wash("2026-05-23")};
    use.crashes = {make.crash("2026-05-16")};
    events = {event(1, "2026-05-23", "2026-05-24")};
    const auto seen = ahead("2026-06-01");
    EXPECT_DOUBLE_EQ(seen.practiceHours.mean, 1.5);
    EXPECT_DOUBLE_EQ(seen.raceHours.mean, 4);
    EXPECT_DOUBLE_EQ(seen.of(usage::Piece::Starts).mean, 1);
    EXPECT_DOUBLE_EQ(seen.of(usage::Piece::Washes).mean, 0.75);
    EXPECT_DOUBLE_EQ(seen.of(usage::Piece::MudDays).mean, 0.25);
    EXPECT_DOUBLE_EQ(seen.of(usage::Piece::Crashes).mean, 0.25);
    // Distances: 20 and 60 km noted, their mean of 40 for the two others: 40 km an outing.
    EXPECT_DOUBLE_EQ(seen.metres.mean, 40'000);
}

TEST_F(AheadTest, OneKindOfOutingStandsInForTheOther) {
    saturdays("2026-05-02", 2, "3");
    EXPECT_DOUBLE_EQ(ahead("2026-06-01").raceHours.mean, 3);
    use.outings = {make.race("2026-05-16", "4", 2)};
    EXPECT_DOUBLE_EQ(ahead("2026-06-01").practiceHours.mean, 4);
}

TEST_F(AheadTest, TheFutureTeachesNothing) {
    saturdays("2026-05-02", 2, "3");
    saturdays("2026-06-06", 2, "9");
    EXPECT_DOUBLE_EQ(ahead("2026-06-01").practiceHours.mean, 3);
}

double shareOf(const GroundMix& mix, usage::Ground ground, usage::Pace pace) {
    for (const GroundMix::Part& part : mix.parts)
        if (part.ground == ground && part.pace == pace)
            return part.share;
    return 0;
}

TEST_F(AheadTest, LearnsTheGroundFromTheHoursOfNotedOutings) {
    using usage::Ground;
    using usage::Pace;
    // 3 h and 1 h on sand, 4 h on hard ground, all practice; a wash between.
    const auto ride = [&](std::string_view date, std::string_view hours, Ground ground, Pace pace) {
        auto outing = make.outing(std::string(date), std::string(hours));
        outing.ground = ground;
        outing.pace = pace;
        use.outings.push_back(outing);
    };
    ride("2026-05-02", "3", Ground::Sand, Pace::Hard);
    ride("2026-05-09", "4", Ground::Hard, Pace::Easy);
    ride("2026-05-16", "1", Ground::Sand, Pace::Hard);
    const auto practice = ahead("2026-06-01");
    EXPECT_DOUBLE_EQ(shareOf(practice.practiceGround, Ground::Sand, Pace::Hard), 0.5);
    EXPECT_DOUBLE_EQ(shareOf(practice.practiceGround, Ground::Hard, Pace::Easy), 0.5);
    EXPECT_EQ(practice.practiceGround.seen, 3);
    EXPECT_DOUBLE_EQ(shareOf(practice.raceGround, Ground::Sand, Pace::Race), 0.5) << "no race seen yet";
    events = {event(1, "2026-05-24", "2026-05-24")};
    ride("2026-05-24", "5", Ground::Mud, Pace::Race);
    const auto raced = ahead("2026-06-01");
    EXPECT_DOUBLE_EQ(shareOf(raced.raceGround, Ground::Mud, Pace::Race), 1);
    EXPECT_DOUBLE_EQ(shareOf(raced.practiceGround, Ground::Sand, Pace::Hard), 0.5);
}

TEST(GroundTest, WeightsChangeMeanAndSpreadOfAnOuting) {
    // Hours 2 with a variation of 0.5; half of the outings on sand that counts three times. By hand: mean 2 x
    // (1 + 3)/2 = 4; second moment of the weight (1 + 9)/2 = 5, so (1 + 0.25) x 5/4 - 1 = 0.5625 = 0.75
    // squared.
    const GroundMix mix{{{usage::Ground::Hard, {}, 0.5}, {usage::Ground::Sand, {}, 0.5}}, 0};
    const std::vector<usage::HourWeight> sand{{usage::Ground::Sand, {}, 3000}};
    const AmountLaw known = weightedLaw({2, 0.5, 0}, mix, sand);
    EXPECT_DOUBLE_EQ(known.mean, 4);
    EXPECT_DOUBLE_EQ(known.spread, 0.75);
    EXPECT_EQ(known.seen, 0) << "known exactly stays known exactly";
    // Of nine outings seen: 0.25/9 of the hours' mean and 0.25/10 of the shares are not known.
    GroundMix learned = mix;
    learned.seen = 9;
    EXPECT_NEAR(1 / weightedLaw({2, 0.5, 9}, learned, sand).sure(), 0.25 / 9 + 0.25 / 10, 1e-12);
    // All on one ground is as uneven as the hours are.
    const AmountLaw all = weightedLaw({2, 0.5, 9}, {{{usage::Ground::Sand, {}, 1}}, 9}, sand);
    EXPECT_DOUBLE_EQ(all.mean, 6);
    EXPECT_DOUBLE_EQ(all.spread, 0.5);
    EXPECT_NEAR(all.seen, 9, 1e-9);
    EXPECT_DOUBLE_EQ(weightedLaw({2, 0.5, 9}, {}, sand).mean, 2)
        << "a ground that nobody stated counts as it is";
    EXPECT_DOUBLE_EQ(weightedLaw({2, 0.5, 9}, {}, std::vector<usage::HourWeight>{{{}, {}, 1500}}).mean, 3);
}

Ahead steady() {
    Ahead ahead;
    ahead.today = day("2026-06-03");  // a Wednesday
    ahead.habitOutingsPerWeek = 0.7;
    ahead.practiceHours.mean = 2;
    ahead.raceHours.mean = 5;
    ahead.metres.mean = 1000;
    ahead.of(usage::Piece::Starts).mean = 3;
    ahead.of(usage::Piece::Washes).mean = 0.5;
    ahead.of(usage::Piece::MudDays).mean = 0.2;
    ahead.of(usage::Piece::Crashes).mean = 0.1;
    return ahead;
}

EventAhead ahead(std::string_view first, std::string_view last, EventKind kind = EventKind::Race) {
    return {EventId{1}, "meeting", kind, day(first), day(last)};
}

TEST(MeanUseTest, HabitIsSpreadOverTheDaysOfFreeWeeks) {
    // Ten days of 0.7 outings a week: one outing of 2 h.
    const Ahead seen = steady();
    EXPECT_DOUBLE_EQ(meanUse(seen, Counter::Outings, day("2026-06-13")), 1);
    EXPECT_DOUBLE_EQ(meanUse(seen, Counter::Hours, day("2026-06-13")), 200);
    EXPECT_DOUBLE_EQ(meanUse(seen, Counter::Metres, day("2026-06-13")), 1000);
    EXPECT_DOUBLE_EQ(meanUse(seen, Counter::Washes, day("2026-06-13")), 0.5);
    EXPECT_DOUBLE_EQ(meanUse(seen, Counter::MudDays, day("2026-06-13")), 0.2);
    EXPECT_DOUBLE_EQ(meanUse(seen, Counter::Crashes, day("2026-06-13")), 0.1);
    EXPECT_DOUBLE_EQ(meanUse(seen, Counter::Starts, day("2026-06-13")), 0);
    EXPECT_DOUBLE_EQ(meanUse(seen, Counter::Days, day("2026-06-13")), 10);
    EXPECT_DOUBLE_EQ(meanUse(seen, Counter::Months, day("2026-06-13")), 10);
    EXPECT_EQ(meanUse(seen, Counter::Hours, day("2026-06-03")), 0);
    EXPECT_EQ(meanUse(seen, Counter::Hours, day("2026-06-01")), 0);
    EXPECT_EQ(meanUse(seen, Counter::Days, day("2026-06-01")), 0);
}

TEST(MeanUseTest, AWeekWithAnEventHasThatEventAndNoHabit) {
    // A race on Saturday 13 and Sunday 14 June, a practice on the 16th. Free days up to Sunday the 21st: 4 to
    // 7 June = 4, of 8-14 and 15-21 June none: 0.4 outings of habit, 1 practice, 2 race days.
    Ahead seen = steady();
    seen.events = {ahead("2026-06-13", "2026-06-14"), ahead("2026-06-16", "2026-06-16", EventKind::Practice)};
    EXPECT_DOUBLE_EQ(meanUse(seen, Counter::Outings, day("2026-06-21")), 3.4);
    EXPECT_DOUBLE_EQ(meanUse(seen, Counter::Hours, day("2026-06-21")), 100 * (1.4 * 2 + 2 * 5));
    EXPECT_DOUBLE_EQ(meanUse(seen, Counter::Starts, day("2026-06-21")), 6);
    EXPECT_DOUBLE_EQ(meanUse(seen, Counter::Starts, day("2026-06-13")), 3) << "up to and including the day";
    EXPECT_DOUBLE_EQ(meanUse(seen, Counter::Outings, day("2026-06-12")), 0.4);
}

TEST(MeanUseTest, TwoEventsOfOneWeekTakeItsHabitOnce) {
    // Sunday 14 June in its own week, Monday to Tuesday 15-16 and Saturday 20 in the next.
    Ahead seen = steady();
    seen.events = {ahead("2026-06-14", "2026-06-16"), ahead("2026-06-20", "2026-06-20")};
    EXPECT_DOUBLE_EQ(meanUse(seen, Counter::Outings, day("2026-06-21")), 0.4 + 4);
    // An event that runs since Monday: its days to come, and this week free of habit.
    seen.events = {ahead("2026-06-01", "2026-06-05")};
    EXPECT_DOUBLE_EQ(meanUse(seen, Counter::Outings, day("2026-06-07")), 2);
}

class StandingTest : public testing::Test {
  protected:
    Ahead seen = steady();
    upkeep::TaskVersion task = made::task({});
    upkeep::Countdown countdown;

    void limit(Counter counter, std::int64_t left, std::optional<calendar::Date> dueOn = {}) {
        upkeep::LimitState state;
        state.limit.counter = counter;
        state.left = left;
        state.dueOn = dueOn;
        countdown.limits.push_back(state);
    }
    Standing standing() { return standingOf(task, countdown, Odds(seen)); }
};

TEST_F(StandingTest, OverdueIsOverBeyondAnyAllowanceOrTriggered) {
    limit(Counter::Hours, -10);
    countdown.over = true;
    EXPECT_EQ(standing().kind, StandingKind::Overdue);
    EXPECT_EQ(standing().reach, 1);
    EXPECT_EQ(standing().likely, seen.today);
    countdown.withinAllowance = true;
    EXPECT_EQ(standing().kind, StandingKind::BeforeEvent);
    EXPECT_EQ(standing().reach, 1);
    countdown.triggered = upkeep::Happening::Wash;
    EXPECT_EQ(standing().kind, StandingKind::Overdue);
    countdown = {};
    countdown.over = countdown.noRecord = true;
    countdown.triggered = upkeep::Happening::Wash;
    EXPECT_EQ(standing().kind, StandingKind::Overdue) << "a happening is known without a record";
}

TEST_F(StandingTest, WhatIsOnlyThereAtItsMostMayBeOver) {
    limit(Counter::Hours, -10);
    countdown.reached = upkeep::Reached::MayBe;
    EXPECT_EQ(standing().kind, StandingKind::MayBeOver);
    EXPECT_EQ(standing().reach, 1);
    EXPECT_FALSE(standing().chance);
    // Over by what is likely, and allowed: but not by the most.
    countdown.reached = upkeep::Reached::Yes;
    countdown.beyond = upkeep::Reached::MayBe;
    countdown.over = countdown.withinAllowance = true;
    EXPECT_EQ(standing().kind, StandingKind::MayBeOver);
    countdown.triggered = upkeep::Happening::Wash;
    EXPECT_EQ(standing().kind, StandingKind::Overdue);
}

TEST_F(StandingTest, OfWhatNobodyKnowsEnoughThereIsNoRecord) {
    limit(Counter::Hours, 400);
    countdown.reached = upkeep::Reached::NobodyKnows;
    EXPECT_EQ(standing().kind, StandingKind::NoRecord);
    EXPECT_FALSE(standing().likely);
}

TEST_F(StandingTest, WhatIsDueBeforeEachRaceIsSoWithoutARecord) {
    countdown.noRecord = countdown.beforeNextRace = true;
    task.triggers = {{upkeep::Happening::BeforeRace, {}}};
    seen.events = {{.name = "club day",
                    .kind = EventKind::Practice,
                    .first = seen.today.plusDays(5),
                    .last = seen.today.plusDays(5)}};
    EXPECT_EQ(standing().kind, StandingKind::NoRecord);
    seen.events.front().kind = EventKind::Race;
    EXPECT_EQ(standing().kind, StandingKind::BeforeEvent);
    countdown.beforeNextRace = false;
    EXPECT_EQ(standing().kind, StandingKind::NoRecord);
}

TEST_F(StandingTest, NoRecordStaysNoRecord) {
    countdown.noRecord = true;
    EXPECT_EQ(standing().kind, StandingKind::NoRecord);
    EXPECT_FALSE(standing().likely);
    EXPECT_EQ(standing().reach, 0);
}

TEST_F(StandingTest, TheWindowIsThatOfTheOutingsWhichItTakes) {
    // Two outings of 2 h reach 2.8 h. At 0.1 a day the second comes after half the chi-square quantiles of 4
    // degrees of freedom over 0.1: 1.064, 3.357, 7.779 (NIST/SEMATECH e-Handbook, table 1.3.6.7.4, but the
    // median, from Boost.Math): in the course of the days 6, 17 and 39.
    limit(Counter::Hours, 280);
    EXPECT_EQ(standing().early, day("2026-06-09"));
    EXPECT_EQ(standing().likely, day("2026-06-20"));
    EXPECT_EQ(standing().late, day("2026-07-12"));
    EXPECT_FALSE(standing().event);
}

// 2.8 of its hours are left till about 20 June, but its year is over on the 13th.
TEST_F(StandingTest, NamesTheLimitThatGivesTheDay) {
    limit(Counter::Hours, 280);
    EXPECT_EQ(standing().limit, std::nullopt) << "there is but one";
    limit(Counter::Days, 12, day("2026-06-13"));
    EXPECT_EQ(standing().likely, day("2026-06-13"));
    EXPECT_EQ(standing().limit, 1U);
    countdown.limits[1].left = 40;
    countdown.limits[1].dueOn = day("2026-07-11");
    EXPECT_EQ(standing().limit, 0U);
    task.combine = upkeep::Combine::Last;
    EXPECT_EQ(standing().limit, std::nullopt) << "all of them must be there";
}

TEST_F(StandingTest, SandThatCountsDoubleComesInHalfTheOutings) {
    // 2.8 h left: two outings of 2 h as ridden, one in sand that counts as 4 h. The first outing comes with a
    // chance of a half after ln 2 / 0.1 = 6.9 days.
    seen.practiceGround = {{{usage::Ground::Sand, usage::Pace::Unstated, 1}}, 0};
    limit(Counter::Hours, 280);
    EXPECT_EQ(standing().likely, day("2026-06-20"));
    task.weights = {{usage::Ground::Sand, {}, 2000}};
    EXPECT_EQ(standing().likely, day("2026-06-10"));
    // In 14 days 1.4 outings of 4 h: 5.6 h, of which 2.8 are left.
    EXPECT_DOUBLE_EQ(standing().reach, 0.5);
    task.weights = {{usage::Ground::Mud, {}, 2000}};
    EXPECT_EQ(standing().likely, day("2026-06-20")) << "it is not ridden in mud";
}

TEST_F(StandingTest, WithoutAnEventTwoWeeksAreNear) {
    // In 14 days 1.4 outings of 2 h: two or more with 1 - 2.4 exp(-1.4) = 40.8 %, one or more with 75.3 %.
    limit(Counter::Hours, 280);
    EXPECT_EQ(standing().kind, StandingKind::InHand);
    EXPECT_NEAR(*standing().chance, 1 - 2.4 * std::exp(-1.4), 1e-6);
    countdown.limits[0].left = 70;
    EXPECT_EQ(standing().kind, StandingKind::BeforeEvent);
    EXPECT_EQ(standing().likely, day("2026-06-10")) << "ln 2 / 0.1 = 6.9 days";
    EXPECT_NEAR(*standing().chance, 1 - std::exp(-1.4), 1e-6);
    EXPECT_DOUBLE_EQ(standing().reach, 0.75);
    countdown.limits[0].left = 1'000'000;
    EXPECT_FALSE(standing().likely) << "too far off to say";
    EXPECT_EQ(standing().chance, 0);
}

TEST_F(StandingTest, FallsDueUpToTheEndOfTheNextEvent) {
    // Race on 13-14 June: two race days of 5 h beside 0.4 outings of 2 h.
    seen.events = {ahead("2026-06-13", "2026-06-14"), ahead("2026-07-04", "2026-07-05")};
    limit(Counter::Hours, 980);
    EXPECT_EQ(standing().kind, StandingKind::BeforeEvent);
    EXPECT_EQ(standing().event->first, day("2026-06-13"));
    EXPECT_EQ(standing().likely, day("2026-06-14"));
    EXPECT_DOUBLE_EQ(standing().reach, 1 - 980.0 / 1080);
    countdown.limits[0].left = 1081;  // one outing of habit has to come too: 33 %
    EXPECT_EQ(standing().kind, StandingKind::InHand);
    EXPECT_NEAR(*standing().chance, 1 - std::exp(-0.4), 1e-3);
    EXPECT_EQ(standing().event->first, day("2026-06-13")) << "the next one stands by";
    EXPECT_EQ(standing().reach, 0);
}

TEST_F(StandingTest, NobodyKnowsTheHabit) {
    seen.trust = Trust::Unknown;
    limit(Counter::Hours, 280);
    EXPECT_FALSE(standing().chance);
    EXPECT_TRUE(standing().likely);
}

TEST_F(StandingTest, ADateIsADate) {
    seen.events = {ahead("2026-06-13", "2026-06-14")};
    limit(Counter::Months, 11, day("2026-06-14"));
    EXPECT_EQ(standing().kind, StandingKind::BeforeEvent);
    EXPECT_EQ(standing().likely, day("2026-06-14"));
    EXPECT_EQ(standing().reach, 0);
    countdown.limits[0].left = 12;
    countdown.limits[0].dueOn = day("2026-06-15");
    EXPECT_EQ(standing().kind, StandingKind::InHand);
    countdown.limits[0].left = 800;
    countdown.limits[0].dueOn = day("2028-08-11");
    EXPECT_EQ(standing().likely, day("2028-08-11")) << "known however far off";
}

TEST_F(StandingTest, OfSeveralLimitsTheFirstOrTheLastDecides) {
    limit(Counter::Days, 30, day("2026-07-03"));
    limit(Counter::Hours, 100);  // one outing
    EXPECT_EQ(standing().likely, day("2026-06-10"));
    EXPECT_EQ(standing().late, day("2026-06-27")) << "ln 10 / 0.1 = 23.03 days";
    EXPECT_EQ(standing().kind, StandingKind::BeforeEvent);
    task.combine = upkeep::Combine::Last;
    EXPECT_EQ(standing().early, day("2026-07-03"));
    EXPECT_EQ(standing().likely, day("2026-07-03"));
    EXPECT_EQ(standing().kind, StandingKind::InHand);
    limit(Counter::Starts, 100);
    EXPECT_FALSE(standing().likely);
    task.combine = upkeep::Combine::First;
    EXPECT_EQ(standing().likely, day("2026-06-10"));
    // Two on one meter: the lower counts, or the higher; the more pressing turns the mark.
    countdown.limits.clear();
    limit(Counter::Hours, 81);
    limit(Counter::Hours, 120);
    EXPECT_DOUBLE_EQ(standing().reach, 1 - 81.0 / 280);
    task.combine = upkeep::Combine::Last;
    EXPECT_DOUBLE_EQ(standing().reach, 1 - 120.0 / 280);
    countdown.limits[0].left = -5;
    EXPECT_EQ(standing().likely, day("2026-06-10")) << "the other is still to come";
}

TEST_F(StandingTest, AWashOrAMudDayIsForeseen) {
    // Every other outing is washed, one of five is in mud: 0.05 and 0.02 a day.
    task.triggers = {{upkeep::Happening::Wash, {}}};
    EXPECT_EQ(standing().likely, day("2026-06-17")) << "ln 2 / 0.05 = 13.9 days";
    EXPECT_EQ(standing().kind, StandingKind::BeforeEvent);
    task.triggers = {{upkeep::Happening::MudDay, {}}};
    EXPECT_EQ(standing().likely, day("2026-07-08")) << "ln 2 / 0.02 = 34.7 days";
    task.triggers = {{upkeep::Happening::Crash, {}}, {upkeep::Happening::Job, "other"}};
    EXPECT_FALSE(standing().likely);
    EXPECT_EQ(standing().chance, 0);
}

TEST_F(StandingTest, SomeJobsWaitForARace) {
    countdown.beforeNextRace = true;
    EXPECT_EQ(standing().kind, StandingKind::InHand);
    EXPECT_FALSE(standing().likely);
    seen.events = {ahead("2026-06-13", "2026-06-14", EventKind::Practice)};
    EXPECT_EQ(standing().kind, StandingKind::InHand);
    seen.events[0].kind = EventKind::Race;
    EXPECT_EQ(standing().kind, StandingKind::BeforeEvent);
    EXPECT_EQ(standing().likely, day("2026-06-13"));
    EXPECT_EQ(standing().reach, 0);
    limit(Counter::Hours, 2000);  // far beyond the race
    EXPECT_EQ(standing().likely, day("2026-06-13"));
    countdown.limits[0].left = 70;  // the next outing: 6.9 days, sooner than the race
    EXPECT_EQ(standing().early, day("2026-06-05"));
    EXPECT_GT(standing().reach, 0);
    seen.events = {ahead("2026-06-13", "2026-06-14", EventKind::Practice), ahead("2026-07-04", "2026-07-05")};
    countdown.limits.clear();
    EXPECT_EQ(standing().likely, day("2026-07-04")) << "the next race, not the next event";
    EXPECT_EQ(standing().kind, StandingKind::InHand);
}

class WhatIfTest : public testing::Test {
  protected:
    const Ahead seen = steady();
    static std::optional<calendar::Date> likely(const Ahead& ahead, Counter counter, std::int64_t left) {
        return Odds(ahead).windowOf({upkeep::Combine::First, {{counter, left}}}).likely;
    }
};

TEST_F(WhatIfTest, TwiceAsOftenIsHalfAsFar) {
    const Ahead more = ridingMoreOften(seen, 2);
    EXPECT_EQ(likely(seen, Counter::Outings, 1), day("2026-06-10"));
    EXPECT_EQ(likely(more, Counter::Outings, 1), day("2026-06-07")) << "ln 2 / 0.2 = 3.5 days";
    EXPECT_DOUBLE_EQ(meanUse(more, Counter::Hours, day("2026-06-13")), 400);
    EXPECT_EQ(meanUse(seen, Counter::Hours, day("2026-06-13")), 200) << "nothing is kept";
}

TEST_F(WhatIfTest, MudMakesMudDaysAndSandNone) {
    EXPECT_EQ(likely(ridingOn(seen, usage::Ground::Mud), Counter::MudDays, 1), day("2026-06-10"));
    EXPECT_EQ(likely(ridingOn(seen, usage::Ground::Sand), Counter::MudDays, 1), std::nullopt);
}

TEST_F(WhatIfTest, OnSandWhatWeightsSandComesSooner) {
    Ahead mixed = seen;
    mixed.practiceGround = {{{usage::Ground::Hard, usage::Pace::Easy, 1}}, 0};
    const DuePoint point{upkeep::Combine::First, {{Counter::Hours, 280}}, {{usage::Ground::Sand, {}, 2000}}};
    EXPECT_EQ(Odds(mixed).windowOf(point).likely, day("2026-06-20"));
    EXPECT_EQ(Odds(ridingOn(mixed, usage::Ground::Sand)).windowOf(point).likely, day("2026-06-10"));
    EXPECT_EQ(
        shareOf(ridingOn(mixed, usage::Ground::Sand).practiceGround, usage::Ground::Sand, usage::Pace::Easy),
        1);
    EXPECT_EQ(Odds(ridingOn(seen, usage::Ground::Sand)).windowOf(point).likely, day("2026-06-10"))
        << "where nobody ever stated a ground";
}

TEST_F(WhatIfTest, OneMoreEventStandsInItsOrder) {
    const Ahead more =
        withEvent(withEvent(seen, ahead("2026-07-04", "2026-07-05")), ahead("2026-06-13", "2026-06-13"));
    ASSERT_EQ(more.events.size(), 2U);
    EXPECT_EQ(more.events[0].first, day("2026-06-13"));
    EXPECT_EQ(likely(more, Counter::Starts, 4), day("2026-07-04"));
}

}  // namespace
}  // namespace wm::outlook
