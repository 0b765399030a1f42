// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a limit is reached, where what is behind it is known between two ends or not at all.
#include "tests/core/upkeep/one_task.h"

namespace wm::upkeep {
namespace {

using made::day;
using made::every;
using made::task;

class ReachedTest : public OneTask {};

TEST_F(ReachedTest, SafetyIsReckonedFromTheHighEnd) {
    // A wheel was fitted in an unlogged stretch: 0..4..6 h behind it, interval 5 h.
    use.hourReadings = {make.reading("2026-05-01", "10"), make.reading("2026-05-07", "16")};
    const auto machine = usage::atomsOf(use);
    const std::vector<items::Move> moves{
        make.fit(ItemId{1}, MachineId{9}, "wheel", made::evening("2026-05-03"))};
    it.atoms = items::atomsOf(made::newItem(ItemId{1}, "2026-05-01"), items::Fittings(moves),
                              [&](MachineId) { return std::span(machine); });
    it.since = day("2026-05-01");
    it.versions = {task({every("5")}, Consequence::EndsRace)};
    EXPECT_EQ(it.on("2026-05-07").limits[0].behind, (CountBracket{0, 400, 600}));
    EXPECT_EQ(it.on("2026-05-07").limits[0].left, 100);
    it.versions = {task({every("5")}, Consequence::SafetyEvident)};
    EXPECT_EQ(it.on("2026-05-07").limits[0].left, -100);
    it.versions = {task({every("5")}, Consequence::SafetyHidden)};
    EXPECT_FALSE(it.on("2026-05-07").over);
    EXPECT_EQ(it.on("2026-05-07").reached, Reached::MayBe);
    EXPECT_DOUBLE_EQ(it.on("2026-05-07").used, 1.2);
    // Over is what is over at its likely figure, safety or not.
    it.versions = {task({every("4")}, Consequence::HiddenWear)};
    EXPECT_EQ(it.on("2026-05-07").reached, Reached::Yes);
    EXPECT_TRUE(it.on("2026-05-07").over);
    it.versions = {task({every("6.01")}, Consequence::SafetyHidden)};
    EXPECT_EQ(it.on("2026-05-07").reached, Reached::No);
}

TEST_F(ReachedTest, WhetherALimitIsReachedIsSaidByTheEndsThatAreKnown) {
    const auto atTen = [](std::int64_t count) { return count >= 10; };
    const auto is = [&](std::int64_t low, std::optional<std::int64_t> best,
                        std::optional<std::int64_t> high) {
        return reached({low, best, high}, atTen);
    };
    EXPECT_EQ(is(1, 10, 12), Reached::Yes) << "equal is due";
    EXPECT_EQ(is(10, {}, {}), Reached::Yes) << "the least proves it";
    EXPECT_EQ(is(1, 9, 10), Reached::MayBe);
    EXPECT_EQ(is(1, {}, 10), Reached::MayBe);
    EXPECT_EQ(is(1, 9, {}), Reached::MayBe) << "nobody knows how much more";
    EXPECT_EQ(is(9, {}, {}), Reached::NobodyKnows);
    EXPECT_EQ(is(1, {}, 9), Reached::No);
    EXPECT_EQ(is(1, 8, 9), Reached::No);
}

TEST_F(ReachedTest, AnAllowanceIsReckonedFromTheSameEnds) {
    // 0..4..6 h behind: 3 h with 2 h allowed are over and allowed by the likely figure, not by the most.
    use.hourReadings = {make.reading("2026-05-01", "10"), make.reading("2026-05-07", "16")};
    it.atoms = usage::atomsOf(use);
    it.records = {make.record("2026-05-03")};
    it.versions = {task({{.every = 300, .allowance = 200}})};
    auto down = it.on("2026-05-07");
    EXPECT_EQ(down.limits[0].behind, (CountBracket{0, 400, 600}));
    EXPECT_EQ(down.reached, Reached::Yes);
    EXPECT_EQ(down.beyond, Reached::MayBe);
    EXPECT_TRUE(down.withinAllowance);
    it.versions = {task({{.every = 300, .allowance = 50}})};
    EXPECT_FALSE(it.on("2026-05-07").withinAllowance);
}

TEST_F(ReachedTest, TheLimitThatIsReachedMostSurelyDecides) {
    ride("2026-02-01", "8");
    past("20", "20", "20");
    // Done on a day before the file: 8 to 28 h behind it, and of the washes nobody knows.
    it.records = {make.record("2025-06-01", RecordKind::Baseline)};
    it.versions = {task({every("40"), every(3, Counter::Washes)})};
    EXPECT_EQ(it.on("2026-03-01").reached, Reached::NobodyKnows);
    EXPECT_EQ(it.on("2026-03-01").governing, 1U);
    it.versions = {task({every("20"), every(3, Counter::Washes)})};
    EXPECT_EQ(it.on("2026-03-01").reached, Reached::MayBe);
    EXPECT_EQ(it.on("2026-03-01").governing, 0U);
    it.versions[0].combine = Combine::Last;
    EXPECT_EQ(it.on("2026-03-01").reached, Reached::NobodyKnows);
}

TEST_F(ReachedTest, WhatIsToldStandsInPlaceOfWhatWasCounted) {
    ride("2026-02-01", "3");
    past("60", "80", "100");
    use.washes = {make.wash("2026-02-02")};
    it.atoms = usage::atomsOf(use);
    past("60", "80", "100");
    it.records = {make.record("2025-06-01", RecordKind::Baseline)};
    const auto told = day("2026-01-15");
    it.records[0].stated = {{Counter::Hours, 1000, 1500, 2500, told},
                            {Counter::Washes, 2, std::nullopt, 4, told},
                            {Counter::Days, 100, 150, 200, told}};
    it.versions = {task({every("90"), every(10, Counter::Washes), every(6, Counter::Months)})};
    const auto down = it.on("2026-02-10");
    EXPECT_EQ(down.limits[0].behind, (CountBracket{1300, 1800, 2800}));
    EXPECT_EQ(down.limits[1].behind, (CountBracket{3, std::nullopt, 5}));
    EXPECT_EQ(down.limits[2].behind, (CountBracket{126, 176, 226}));
    EXPECT_EQ(down.limits[2].dueOn, day("2026-02-18")) << "six months after 18 August, the likely day";
    EXPECT_EQ(down.reached, Reached::MayBe) << "if it was the earliest day";
}

TEST_F(ReachedTest, WhatWasNeverDoneHasTheWholePastBehindIt) {
    ride("2026-02-01", "3");
    past("60", "80", "100");
    it.records = {make.record("2026-01-01", RecordKind::Baseline)};
    it.records[0].part = calendar::DayPart::BeforeRiding;
    it.records[0].statedLow = it.records[0].statedBest = it.records[0].statedHigh = units::Hours{0};
    it.versions = {task({{.every = 20'000, .first = 9'000}, every(10, Counter::Washes)})};
    const auto down = it.on("2026-03-01");
    EXPECT_EQ(down.limits[0].behind, (CountBracket{6300, 8300, 10'300}));
    EXPECT_TRUE(down.limits[0].isFirst) << "never done: the run-in holds";
    EXPECT_EQ(down.limits[1].behind, (CountBracket{0, std::nullopt, std::nullopt}));
    EXPECT_EQ(down.completions, 0);
    EXPECT_EQ(down.reached, Reached::MayBe);
}

TEST_F(ReachedTest, AnOpenHighEndMayBeOver) {
    // An outing of which nobody knows the hours, on a machine without any known outing.
    ride("2026-02-01", "");
    it.versions = {task({{.every = 500, .allowance = 100}}, Consequence::SafetyEvident)};
    const auto down = it.on("2026-02-01");
    EXPECT_TRUE(down.limits[0].unbounded);
    EXPECT_EQ(down.limits[0].left, 0);
    EXPECT_FALSE(down.over);
    EXPECT_EQ(down.reached, Reached::MayBe);
    it.versions = {task({every("5")}, Consequence::HiddenWear)};
    EXPECT_FALSE(it.on("2026-02-01").limits[0].unbounded);
    EXPECT_EQ(it.on("2026-02-01").limits[0].left, 500);
}
}  // namespace
}  // namespace wm::upkeep
