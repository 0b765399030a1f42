// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// How one task stands. Rides are of round lengths so that every figure can be added up in the head.
#include "core/calendar/in_force.h"
#include "tests/core/upkeep/one_task.h"

namespace wm::upkeep {
namespace {

using made::day;
using made::every;
using made::hours;
using made::task;

class CountdownTest : public OneTask {};

TEST_F(CountdownTest, CountsFromTheLastCompletion) {
    // 10 h, done, 4 h: 4 of 15 behind, 11 left.
    it.versions = {task({every("15")})};
    ride("2026-02-01", "10");
    ride("2026-03-01", "4");
    it.records = {make.record("2026-02-10")};
    const auto down = it.on("2026-03-01");
    EXPECT_EQ(down.origin, Origin::Record);
    EXPECT_EQ(down.last, it.records[0].id);
    EXPECT_EQ(down.completions, 1);
    ASSERT_EQ(down.limits.size(), 1U);
    EXPECT_EQ(down.limits[0].amount, 1500);
    EXPECT_EQ(down.limits[0].behind, (CountBracket{400, 400, 400}));
    EXPECT_EQ(down.limits[0].left, 1100);
    EXPECT_EQ(down.governing, 0U);
    EXPECT_DOUBLE_EQ(down.used, 4.0 / 15);
    EXPECT_FALSE(down.over);
    EXPECT_FALSE(down.noRecord);
    EXPECT_FALSE(down.limits[0].dueOn);
}

TEST_F(CountdownTest, RidingOfTheEveningsWorkIsBehindTheWork) {
    it.versions = {task({every("15")})};
    ride("2026-02-10", "2");
    it.records = {make.record("2026-02-10")};
    EXPECT_EQ(it.on("2026-02-10").limits[0].left, 1500);
    it.records[0].part = calendar::DayPart::BeforeRiding;
    EXPECT_EQ(it.on("2026-02-10").limits[0].left, 1300);
}

TEST_F(CountdownTest, RecordsInAnyOrderAndNoneOfTheFuture) {
    it.versions = {task({every("15")})};
    ride("2026-02-01", "1");
    ride("2026-03-01", "2");
    it.records = {make.record("2026-02-20"), make.record("2026-01-10"), make.record("2026-04-01")};
    const auto down = it.on("2026-03-31");
    EXPECT_EQ(down.last, it.records[0].id);
    EXPECT_EQ(down.completions, 2);
    EXPECT_EQ(down.limits[0].left, 1300);
}

TEST_F(CountdownTest, OfTwoRecordsOfOneMomentTheOneEnteredLastCounts) {
    it.versions = {task({every("15")})};
    it.records = {make.record("2026-02-20"), make.record("2026-02-20")};
    EXPECT_EQ(it.on("2026-03-31").last, it.records[1].id);
    std::swap(it.records[0], it.records[1]);
    EXPECT_EQ(it.on("2026-03-31").last, it.records[0].id);
}

TEST_F(CountdownTest, NoRecordAndNoKnownStartIsNotZeroHours) {
    it.versions = {task({every("15")})};
    it.startedNew = false;
    ride("2026-02-01", "40");
    const auto down = it.on("2026-03-01");
    EXPECT_TRUE(down.noRecord);
    EXPECT_EQ(down.origin, Origin::Nothing);
    EXPECT_TRUE(down.limits.empty());
    EXPECT_FALSE(down.governing);
    EXPECT_FALSE(down.over);
    EXPECT_EQ(down.used, 0);
}

TEST_F(CountdownTest, AKnownStartCountsFromTheFirstDay) {
    it.versions = {task({every("15")})};
    ride("2026-02-01", "4");
    const auto down = it.on("2026-03-01");
    EXPECT_EQ(down.origin, Origin::KnownStart);
    EXPECT_FALSE(down.last);
    EXPECT_FALSE(down.noRecord);
    EXPECT_EQ(down.limits[0].left, 1100);
}

TEST_F(CountdownTest, DueAtTheLimitNotABitBefore) {
    it.versions = {task({every("15")})};
    ride("2026-02-01", "14.99");
    EXPECT_FALSE(it.on("2026-03-01").over);
    ride("2026-02-02", "0.01");
    EXPECT_TRUE(it.on("2026-03-01").over);
    EXPECT_EQ(it.on("2026-03-01").limits[0].left, 0);
    EXPECT_FALSE(it.on("2026-03-01").withinAllowance);
    EXPECT_DOUBLE_EQ(it.on("2026-03-01").used, 1);
}

TEST_F(CountdownTest, TheFirstIntervalHoldsUntilTheFirstCompletion) {
    // Valves: first at 5 h, then every 30.
    it.versions = {task({{.every = 3000, .first = 500}})};
    ride("2026-02-01", "6");
    auto down = it.on("2026-03-01");
    EXPECT_TRUE(down.limits[0].isFirst);
    EXPECT_EQ(down.limits[0].amount, 500);
    EXPECT_EQ(down.limits[0].left, -100);
    EXPECT_TRUE(down.over);
    it.records = {make.record("2026-02-10")};
    down = it.on("2026-03-01");
    EXPECT_FALSE(down.limits[0].isFirst);
    EXPECT_EQ(down.limits[0].left, 3000);
}

TEST_F(CountdownTest, AFirstIntervalOfNothingIsDueAtOnce) {
    // Linkage bearings of a new machine: before the first ride.
    it.versions = {task({{.every = 1500, .first = 0}})};
    const auto down = it.on("2026-01-01");
    EXPECT_TRUE(down.over);
    EXPECT_EQ(down.limits[0].left, 0);
    EXPECT_EQ(down.used, 1);
}

TEST_F(CountdownTest, FirstOfTwoLimitsIsWhicheverIsMoreUsed) {
    // 12 months or 50 h. After 6 months and 40 h: 0.8 of the hours, the hours govern, nothing is over.
    it.versions = {task({every(12, Counter::Months), every("50")})};
    ride("2026-02-01", "40");
    auto down = it.on("2026-07-01");
    EXPECT_EQ(down.governing, 1U);
    EXPECT_FALSE(down.over);
    EXPECT_EQ(down.limits[0].dueOn, day("2027-01-01"));
    EXPECT_EQ(down.limits[0].amount, 365);
    EXPECT_EQ(down.limits[0].behind.best, 181);
    EXPECT_EQ(down.limits[0].left, 184);
    // After 12 months the date is there, whatever the hours.
    down = it.on("2027-01-01");
    EXPECT_EQ(down.governing, 0U);
    EXPECT_TRUE(down.over);
    EXPECT_FALSE(it.on("2026-12-31").over);
}

TEST_F(CountdownTest, LastOfTwoLimitsWaitsForBoth) {
    it.versions = {task({every(12, Counter::Months), every("50")})};
    it.versions[0].combine = Combine::Last;
    ride("2026-02-01", "40");
    auto down = it.on("2027-02-01");
    EXPECT_EQ(down.governing, 1U);
    EXPECT_FALSE(down.over);
    EXPECT_DOUBLE_EQ(down.used, 0.8);
    ride("2027-02-02", "10");
    EXPECT_TRUE(it.on("2027-02-02").over);
}

TEST_F(CountdownTest, MonthsEndWithTheMonth) {
    // Done on 31 January: one month later is 28 February.
    it.versions = {task({every(1, Counter::Months)})};
    it.records = {make.record("2026-01-31")};
    const auto down = it.on("2026-02-27");
    EXPECT_EQ(down.limits[0].dueOn, day("2026-02-28"));
    EXPECT_EQ(down.limits[0].left, 1);
    EXPECT_TRUE(it.on("2026-02-28").over);
}

TEST_F(CountdownTest, DaysAreCountedFromTheDayItWasDone) {
    it.versions = {task({{.counter = Counter::Days, .every = 30, .first = 10, .allowance = 5}})};
    EXPECT_EQ(it.on("2026-01-05").limits[0].dueOn, day("2026-01-11"));
    it.records = {make.record("2026-02-01")};
    const auto down = it.on("2026-03-04");
    EXPECT_EQ(down.limits[0].dueOn, day("2026-03-03"));
    EXPECT_EQ(down.limits[0].left, -1);
    EXPECT_EQ(down.limits[0].leftWithAllowance, 4);
    EXPECT_EQ(down.limits[0].behind, (CountBracket{31, 31, 31}));
}

TEST_F(CountdownTest, AHundredYearsIsNever) {
    it.versions = {task({every(1'000'000'000, Counter::Months), every(1'000'000'000, Counter::Days)})};
    const auto down = it.on("2026-02-01");
    EXPECT_EQ(down.limits[0].dueOn, day("2126-01-01"));
    EXPECT_EQ(down.limits[1].dueOn, day("2126-01-02"));
    it.versions[0].countFrom = CountFrom::FixedMarks;
    it.records = {make.record("2026-01-20")};
    EXPECT_EQ(it.on("2026-02-01").limits[0].dueOn, day("2126-01-01"));
}

TEST_F(CountdownTest, EveryCounterCounts) {
    use.outings = {make.race("2026-02-01", "1", 3), make.outing("2026-02-02", "1", usage::Ground::Mud)};
    use.outings[0].distance = made::km("10");
    use.outings[1].distance = made::km("5");
    use.washes = {make.wash("2026-02-02"), make.wash("2026-02-03"), make.wash("2026-02-03"),
                  make.wash("2026-02-04")};
    use.crashes = {make.crash("2026-02-02"), make.crash("2026-02-03"), make.crash("2026-02-04"),
                   make.crash("2026-02-04"), make.crash("2026-02-05")};
    it.atoms = usage::atomsOf(use);
    it.versions = {
        task({every(100'000, Counter::Metres), every(10, Counter::Outings), every(10, Counter::Starts),
              every(10, Counter::Washes), every(10, Counter::MudDays), every(10, Counter::Crashes)})};
    std::vector<std::int64_t> left;
    for (const LimitState& limit : it.on("2026-03-01").limits)
        left.push_back(limit.left);
    EXPECT_EQ(left, (std::vector<std::int64_t>{85'000, 8, 7, 6, 9, 5}));
}

TEST_F(CountdownTest, ASoftLimitMayBeOverrunByItsAllowance) {
    it.versions = {task({{.every = 1500, .allowance = 200}})};
    ride("2026-02-01", "17");
    auto down = it.on("2026-03-01");
    EXPECT_TRUE(down.over);
    EXPECT_TRUE(down.withinAllowance);
    EXPECT_EQ(down.limits[0].leftWithAllowance, 0);
    ride("2026-02-02", "0.01");
    EXPECT_TRUE(it.on("2026-03-01").over);
    EXPECT_FALSE(it.on("2026-03-01").withinAllowance);
    // A hard limit has none, whatever is written there.
    it.versions[0].limits[0].hard = true;
    it.versions[0].limits[0].every = 1701;
    down = it.on("2026-03-01");
    EXPECT_EQ(down.limits[0].leftWithAllowance, 0);
    EXPECT_FALSE(down.withinAllowance);
}

TEST_F(CountdownTest, AllowancesOfSeveralLimits) {
    // First of: 10 h with 2 h grace and 3 outings without. 11 h, 2 outings: within; a third outing: not.
    it.versions = {task({{.every = 1000, .allowance = 200}, every(3, Counter::Outings)})};
    ride("2026-02-01", "10");
    ride("2026-02-02", "1");
    EXPECT_TRUE(it.on("2026-03-01").withinAllowance);
    ride("2026-02-03", "0.1");
    EXPECT_FALSE(it.on("2026-03-01").withinAllowance);
    // Last of: over only when both are, within while either allows it.
    it.versions[0].combine = Combine::Last;
    EXPECT_TRUE(it.on("2026-03-01").over);
    EXPECT_TRUE(it.on("2026-03-01").withinAllowance);
    EXPECT_FALSE(it.on("2026-02-02").over);
    EXPECT_FALSE(it.on("2026-02-02").withinAllowance);
}

TEST_F(CountdownTest, ABaselineIsAnOrigin) {
    // Bought with 80 h, pads done on the day by the seller's word; 3 h since.
    ride("2026-02-01", "3");
    past("60", "80", "100");
    it.records = {make.record("2026-01-01", RecordKind::Baseline)};
    it.versions = {task({{.every = 1500, .first = 500}})};
    const auto down = it.on("2026-02-01");
    EXPECT_EQ(down.origin, Origin::Baseline);
    EXPECT_EQ(down.limits[0].left, 1200);
    EXPECT_FALSE(down.limits[0].isFirst);
}

TEST_F(CountdownTest, AnOldBaselineHasAnyPartOfThePastBehindIt) {
    ride("2026-02-01", "3");
    past("60", "80", "100");
    it.records = {make.record("2025-06-01", RecordKind::Baseline)};
    it.versions = {task({every("90"), every(10, Counter::Washes)})};
    auto down = it.on("2026-02-01");
    EXPECT_EQ(down.limits[0].behind, (CountBracket{300, std::nullopt, 10300}));
    EXPECT_EQ(down.limits[1].behind, (CountBracket{0, std::nullopt, std::nullopt}))
        << "nobody counted the washes";
    // "Done at 70 of its 80 h": 10 h of the past remain, between 60 - 70 = none and 100 - 70 = 30.
    it.records[0].statedBest = hours("70");
    down = it.on("2026-02-01");
    EXPECT_EQ(down.limits[0].behind, (CountBracket{300, 1300, 3300}));
    it.records[0].statedLow = hours("50");
    it.records[0].statedHigh = hours("58");
    EXPECT_EQ(it.on("2026-02-01").limits[0].behind, (CountBracket{500, 1300, 5300}));
    past("60", "80", "");
    EXPECT_EQ(it.on("2026-02-01").limits[0].behind, (CountBracket{500, 1300, std::nullopt}));
    it.records[0].statedLow = it.records[0].statedBest = it.records[0].statedHigh = std::nullopt;
    EXPECT_EQ(it.on("2026-02-01").limits[0].behind, (CountBracket{300, std::nullopt, std::nullopt}));
}

TEST_F(CountdownTest, LookedFineIsDoneForACheckAndNotForARenewal) {
    it.versions = {task({every("15")})};
    ride("2026-02-01", "10");
    it.records = {make.record("2026-02-10", RecordKind::LookedFine)};
    EXPECT_EQ(it.on("2026-03-01").limits[0].left, 1500);
    it.versions[0].kit = {{.what = "cotter", .amount = 1, .onlyIfNeeded = true}};
    EXPECT_EQ(it.on("2026-03-01").limits[0].left, 1500);
    it.versions[0].kit.push_back({.what = "brake fluid", .amount = 200});
    EXPECT_EQ(it.on("2026-03-01").limits[0].left, 500) << "what is always used up is not renewed by looking";
    it.versions[0].kit.clear();
    it.versions[0].renews = true;
    EXPECT_EQ(it.on("2026-03-01").limits[0].left, 500);
    EXPECT_EQ(it.on("2026-03-01").completions, 0);
}

TEST_F(CountdownTest, OldRecordsStayUnderTheirOwnVersion) {
    // A check until March, a renewal of 20 h from then on: the look of February still counts as done.
    it.versions = {task({every("15")}), task({every("20")})};
    it.versions[1].id = TaskVersionId{950};
    it.versions[1].entered = 5;
    it.versions[1].validFrom = day("2026-03-01");
    it.versions[1].renews = true;
    ride("2026-02-01", "10");
    ride("2026-03-10", "4");
    it.records = {make.record("2026-02-10", RecordKind::LookedFine)};
    EXPECT_EQ(it.on("2026-03-10").limits[0].left, 1600)
        << "20 h from the new version, 4 h since the old record";
    EXPECT_EQ(it.on("2026-02-28").limits[0].left, 1500) << "the old version was in force then";
    it.records[0].version = TaskVersionId{950};  // ... unless it says that it followed the new one
    EXPECT_EQ(it.on("2026-03-10").limits[0].left, 600);
    // A record older than any version is read under today's.
    it.records[0].version.reset();
    it.versions[0].validFrom = day("2026-02-20");
    it.records[0].date = day("2026-02-11");
    EXPECT_EQ(it.on("2026-03-10").limits[0].left, 600);
}

TEST_F(CountdownTest, BeforeAnyVersionThereIsNothing) {
    it.versions = {task({every("15")})};
    const auto down = it.on("2019-12-31");
    EXPECT_TRUE(down.noRecord);
    EXPECT_TRUE(down.limits.empty());
}

TEST_F(CountdownTest, TheVersionInForceIsTheLatestOfItsDay) {
    it.versions = {task({}), task({}), task({})};
    it.versions[0].validFrom = day("2026-03-01");
    it.versions[1].entered = 2;
    it.versions[2].entered = 1;
    const std::vector<const TaskVersion*> all{&it.versions[0], &it.versions[1], &it.versions[2]};
    EXPECT_EQ(calendar::inForce(all, day("2026-03-01")), all[0]);
    EXPECT_EQ(calendar::inForce(all, day("2026-02-28")), all[1]);
    EXPECT_EQ(calendar::inForce(all, day("2019-02-28")), nullptr);
}

TEST_F(CountdownTest, FixedMarksStandWhereTheyStand) {
    // Marks at 15, 30, 45 h. Done at 16.2 h: due at 30, 13.8 h on; ridden to 20: 10 h left.
    it.versions = {task({every("15")})};
    it.versions[0].countFrom = CountFrom::FixedMarks;
    ride("2026-02-01", "16.2");
    EXPECT_EQ(it.on("2026-02-01").limits[0].left, -120) << "the mark at 15 is passed";
    it.records = {make.record("2026-02-01")};
    ride("2026-02-10", "3.8");
    auto down = it.on("2026-02-10");
    EXPECT_EQ(down.limits[0].amount, 1380);
    EXPECT_EQ(down.limits[0].left, 1000);
    // Done exactly on the mark: the next one.
    use.outings[0].hours = hours("15");
    it.atoms = usage::atomsOf(use);
    EXPECT_EQ(it.on("2026-02-10").limits[0].amount, 1500);
}

TEST_F(CountdownTest, DoneInTheLastTenthOfTheWayIsDoneForThatMark) {
    // Marks every 15 h: from 13.5 h on a job is the one for the mark at 15; at 13.49 h it is an extra one.
    it.versions = {task({every("15")})};
    it.versions[0].countFrom = CountFrom::FixedMarks;
    ride("2026-02-01", "13.5");
    it.records = {make.record("2026-02-01")};
    EXPECT_EQ(it.on("2026-02-01").limits[0].left, 1650);
    use.outings[0].hours = hours("13.49");
    it.atoms = usage::atomsOf(use);
    EXPECT_EQ(it.on("2026-02-01").limits[0].left, 151);
}

TEST_F(CountdownTest, FixedMarksOfDaysAndMonthsCountFromTheFirstDay) {
    // From 1 January every 3 months: done on 20 April, due on 1 July; done on 25 June, in the last tenth of
    // 91 days: due on 1 October.
    it.versions = {task({every(3, Counter::Months), every(100, Counter::Days)})};
    it.versions[0].countFrom = CountFrom::FixedMarks;
    EXPECT_EQ(it.on("2026-02-01").limits[0].dueOn, day("2026-04-01"));
    it.records = {make.record("2026-04-20")};
    EXPECT_EQ(it.on("2026-05-01").limits[0].dueOn, day("2026-07-01"));
    EXPECT_EQ(it.on("2026-05-01").limits[0].amount, 72);
    // 100-day marks: 11 April, 20 July. The 20th of April is past the first of them.
    EXPECT_EQ(it.on("2026-05-01").limits[1].dueOn, day("2026-07-20"));
    it.records = {make.record("2026-06-25")};
    EXPECT_EQ(it.on("2026-07-01").limits[0].dueOn, day("2026-10-01"));
    it.records = {make.record("2026-01-02")};
    EXPECT_EQ(it.on("2026-07-01").limits[0].dueOn, day("2026-04-01"));
    it.records = {make.record("2026-04-01")};
    EXPECT_EQ(it.on("2026-07-01").limits[0].dueOn, day("2026-07-01")) << "done on the mark's own day";
}

TEST_F(CountdownTest, FixedMarksCountAStatedPastWithItsBest) {
    // 80 h stated, 3 h ridden, done at 83; marks every 30: the next is 90, 7 h on.
    ride("2026-02-01", "3");
    past("60", "80", "100");
    it.versions = {task({every("30")})};
    it.versions[0].countFrom = CountFrom::FixedMarks;
    it.records = {make.record("2026-02-01")};
    EXPECT_EQ(it.on("2026-02-01").limits[0].left, 700);
    // By the seller's word done at 70 h, before we knew it: the next mark from there is 90, 20 h on; 10 + 3
    // since.
    it.records = {make.record("2025-06-01", RecordKind::Baseline)};
    it.records[0].statedBest = hours("70");
    EXPECT_EQ(it.on("2026-02-01").limits[0].amount, 2000);
    EXPECT_EQ(it.on("2026-02-01").limits[0].left, 700);
}

TEST_F(CountdownTest, EveryNthCompletionAddsItsExtraWork) {
    // Ring each time, piston every second: the first time only the ring, then both until the piston was done.
    it.versions = {task({every("15")})};
    it.versions[0].everyNth = 2;
    EXPECT_FALSE(it.on("2026-06-01").extraDue());
    it.records = {make.record("2026-02-01")};
    EXPECT_TRUE(it.on("2026-06-01").extraDue());
    it.records.push_back(make.record("2026-03-01"));
    EXPECT_TRUE(it.on("2026-06-01").extraDue()) << "it was left out, so it is still to be done";
    it.records.push_back(make.record("2026-04-01"));
    it.records.back().extraDone = true;
    EXPECT_FALSE(it.on("2026-06-01").extraDue());
    EXPECT_EQ(it.on("2026-06-01").extraIn, 2);
    EXPECT_EQ(it.on("2026-06-01").completions, 3);
    it.versions[0].everyNth = 4;
    EXPECT_EQ(it.on("2026-06-01").extraIn, 4);
    EXPECT_EQ(it.on("2026-03-15").extraIn, 2) << "two done, the extra work never";
    it.versions[0].everyNth = 0;
    EXPECT_EQ(it.on("2026-06-01").extraIn, 0) << "never";
    EXPECT_FALSE(it.on("2026-06-01").extraDue());
    it.versions[0].everyNth = 1;
    EXPECT_TRUE(it.on("2026-06-01").extraDue());
}

TEST_F(CountdownTest, EveryNthOfAnotherTask) {
    // Rod every fourth piston; the rod was done in February, with the piston of that evening.
    it.versions = {task({})};
    it.versions[0].nthOf = "piston";
    it.versions[0].nth = 4;
    it.others = {make.record("2026-01-05", RecordKind::Done, "piston"),
                 make.record("2026-02-05", RecordKind::Done, "piston")};
    it.records = {make.record("2026-02-05")};
    for (const char* date : {"2026-03-06", "2026-04-06", "2026-05-06"})
        it.others.push_back(make.record(date, RecordKind::Done, "piston"));
    it.others.push_back(make.record("2026-05-07", RecordKind::Done, "clutch"));
    auto down = it.on("2026-06-01");
    EXPECT_EQ(down.othersDone, 3);
    EXPECT_FALSE(down.over);
    EXPECT_DOUBLE_EQ(down.used, 0.75);
    it.others.push_back(make.record("2026-06-01", RecordKind::Done, "piston"));
    EXPECT_TRUE(it.on("2026-06-01").over);
    EXPECT_FALSE(it.on("2026-05-31").over);
}

TEST_F(CountdownTest, ABaselineOfAnotherTaskProvesNothingOfOneWithoutARecord) {
    // The seller's oil change: whether the filter went with it, nobody knows.
    it.startedNew = false;
    it.versions = {task({})};
    it.versions[0].nthOf = "oil";
    it.versions[0].nth = 1;
    it.versions[0].triggers = {{Happening::Job, "oil"}};
    it.others = {make.record("2026-01-05", RecordKind::Baseline, "oil")};
    EXPECT_FALSE(it.on("2026-02-01").over);
    EXPECT_TRUE(it.on("2026-02-01").noRecord);
    it.others.push_back(make.record("2026-02-01", RecordKind::Done, "oil"));
    EXPECT_TRUE(it.on("2026-02-01").over) << "this one was seen, and no filter with it";
    it.others.pop_back();
    it.records = {make.record("2025-12-01", RecordKind::Baseline)};
    EXPECT_TRUE(it.on("2026-02-01").over) << "the filter is known to be older than the oil";
}

TEST_F(CountdownTest, HappeningsSinceTheLastTimeMakeItDue) {
    use.washes = {make.wash("2026-02-01"), make.wash("2026-02-20", true)};
    use.crashes = {make.crash("2026-02-25")};
    use.outings = {make.outing("2026-02-22", "1", usage::Ground::Mud)};
    it.atoms = usage::atomsOf(use);
    it.versions = {task({})};
    const auto triggeredOn = [&](Happening happening) {
        it.versions[0].triggers = {{happening, ""}};
        const auto down = it.on("2026-03-01");
        EXPECT_EQ(down.over, down.triggered.has_value());
        if (down.triggered) {
            EXPECT_EQ(*down.triggered, happening);
        }
        return down.triggeredOn;
    };
    EXPECT_EQ(triggeredOn(Happening::Wash), day("2026-02-01"));
    EXPECT_EQ(triggeredOn(Happening::PressureWash), day("2026-02-20"));
    EXPECT_EQ(triggeredOn(Happening::MudDay), day("2026-02-22"));
    EXPECT_EQ(triggeredOn(Happening::Crash), day("2026-02-25"));
    it.records = {make.record("2026-02-20")};
    EXPECT_EQ(triggeredOn(Happening::Wash), std::nullopt) << "washed, then the work of that evening";
    EXPECT_EQ(triggeredOn(Happening::MudDay), day("2026-02-22"));
    EXPECT_FALSE(it.on("2026-02-21").triggered);
    it.versions[0].triggers = {{Happening::Crash, ""}, {Happening::MudDay, ""}};
    EXPECT_EQ(it.on("2026-03-01").triggered, Happening::MudDay) << "what happened first";
    std::swap(it.versions[0].triggers[0], it.versions[0].triggers[1]);
    EXPECT_EQ(it.on("2026-03-01").triggered, Happening::MudDay) << "in whatever order they are named";
}

TEST_F(CountdownTest, AnotherJobMakesItDue) {
    it.versions = {task({})};
    it.versions[0].triggers = {{Happening::Job, "shock"}};
    it.others = {make.record("2026-02-01", RecordKind::Done, "shock")};
    EXPECT_EQ(it.on("2026-03-01").triggeredOn, day("2026-02-01"));
    it.records = {make.record("2026-02-01")};
    it.others.push_back(make.record("2026-02-01", RecordKind::Done, "shock"));
    it.records[0].entered = 2;
    it.others[0].entered = it.others[1].entered = 1;
    EXPECT_FALSE(it.on("2026-03-01").triggered) << "told after the other job of that evening: done after it";
    it.others.back().entered = 3;
    EXPECT_TRUE(it.on("2026-03-01").triggered) << "told before it";
    it.records[0].kind = RecordKind::Baseline;
    EXPECT_FALSE(it.on("2026-03-01").triggered)
        << "what is known of the time before has no order within a day";
    it.others.back().date = day("2026-02-02");
    EXPECT_TRUE(it.on("2026-03-01").triggered);
    it.others.back().date = day("2026-03-02");
    EXPECT_FALSE(it.on("2026-03-01").triggered);
}

TEST_F(CountdownTest, BeforeARaceItIsDueOnceTheMachineWasRidden) {
    it.versions = {task({})};
    it.versions[0].triggers = {{Happening::BeforeRace, ""}};
    EXPECT_TRUE(it.on("2026-02-01").beforeNextRace) << "never done";
    it.records = {make.record("2026-02-01")};
    EXPECT_FALSE(it.on("2026-02-01").beforeNextRace);
    ride("2026-02-05", "");
    EXPECT_TRUE(it.on("2026-02-05").beforeNextRace);
    EXPECT_FALSE(it.on("2026-02-05").over) << "no race, nothing due";
    use.outings.clear();
    use.hourReadings = {make.reading("2026-02-01", "1"), make.reading("2026-02-03", "2")};
    it.atoms = usage::atomsOf(use);
    EXPECT_TRUE(it.on("2026-02-05").beforeNextRace);
}

TEST_F(CountdownTest, AHappeningIsKnownEvenWithoutARecord) {
    it.versions = {task({})};
    it.versions[0].triggers = {{Happening::Wash, ""}};
    it.startedNew = false;
    EXPECT_TRUE(it.on("2026-03-01").noRecord);
    EXPECT_FALSE(it.on("2026-03-01").over);
    use.washes = {make.wash("2026-02-01")};
    it.atoms = usage::atomsOf(use);
    EXPECT_TRUE(it.on("2026-03-01").over);
    EXPECT_TRUE(it.on("2026-03-01").noRecord);
}

// Every 15 h, mud x 2: 6 h of mud and 4 h of sand since the job are 12 + 4 = 16 h, over by 1; raw they
// are 10.
TEST_F(CountdownTest, WeightedHoursCountAndTheRawOnesStandBeside) {
    it.versions = {task({every("15"), every(5, Counter::Outings)})};
    it.versions[0].weights = {{.ground = usage::Ground::Mud, .permille = 2000}};
    use.outings = {make.outing("2026-02-01", "6", usage::Ground::Mud),
                   make.outing("2026-02-02", "4", usage::Ground::Sand)};
    it.atoms = usage::atomsOf(use);
    const auto down = it.on("2026-02-02");
    EXPECT_EQ(down.limits[0].behind, (CountBracket{1600, 1600, 1600}));
    EXPECT_EQ(down.limits[0].raw, (CountBracket{1000, 1000, 1000}));
    EXPECT_EQ(down.limits[0].left, -100);
    EXPECT_TRUE(down.over);
    EXPECT_EQ(down.limits[1].left, 3);
    EXPECT_FALSE(down.limits[1].raw) << "outings are not weighted";
    it.versions[0].weights.clear();
    EXPECT_EQ(it.on("2026-02-02").limits[0].left, 500);
    EXPECT_FALSE(it.on("2026-02-02").limits[0].raw);
}

// Marks every 10 h, mud x 2. Done after 6 h of mud: at 12 on the weighted scale, the next mark is 20, 8 on.
TEST_F(CountdownTest, FixedMarksStandOnTheWeightedScale) {
    it.versions = {task({every("10")})};
    it.versions[0].countFrom = CountFrom::FixedMarks;
    it.versions[0].weights = {{.ground = usage::Ground::Mud, .permille = 2000}};
    use.outings = {make.outing("2026-02-01", "6", usage::Ground::Mud)};
    it.atoms = usage::atomsOf(use);
    it.records = {make.record("2026-02-01")};
    EXPECT_EQ(it.on("2026-02-01").limits[0].amount, 800);
}

// Stated 50 h at the baseline, of a past of 80 h: 30 h of it lie after, as stated; then 4 h of mud x 2.
TEST_F(CountdownTest, TheRestOfAStatedPastIsNotWeighted) {
    use.outings = {make.outing("2026-02-01", "4", usage::Ground::Mud)};
    past("80", "80", "80");
    it.since = day("2026-01-01");
    it.versions = {task({every("60")})};
    it.versions[0].weights = {{.ground = usage::Ground::Mud, .permille = 2000}};
    it.records = {make.record("2025-06-01", RecordKind::Baseline)};
    it.records[0].statedBest = hours("50");
    const auto down = it.on("2026-02-01");
    EXPECT_EQ(down.limits[0].behind, (CountBracket{3800, 3800, 3800}));
    EXPECT_EQ(down.limits[0].raw, (CountBracket{3400, 3400, 3400}));
}

}  // namespace
}  // namespace wm::upkeep
