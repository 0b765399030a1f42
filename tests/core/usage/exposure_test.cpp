// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/usage/exposure.h"

#include <gtest/gtest.h>

#include "tests/core/made.h"

namespace wm::usage {
namespace {

using made::before;
using made::day;
using made::evening;
using made::hours;
using made::Made;
using made::text;

Atom unlogged(std::string_view from, std::string_view to, std::string_view amount) {
    Atom atom;
    atom.kind = AtomKind::Unlogged;
    atom.from = evening(from);
    atom.to = evening(to);
    atom.hours = HoursBracket::exactly(hours(amount));
    atom.source = 7;
    return atom;
}

TEST(ExposureTest, CountsStrictlyAfterAndUpToAndIncluding) {
    Made make;
    UseFacts facts;
    facts.outings = {make.outing("2026-05-01", "1"), make.outing("2026-05-02", "2"),
                     make.outing("2026-05-03", "4")};
    const auto atoms = atomsOf(facts);
    EXPECT_EQ(text(exposure(atoms, std::nullopt, evening("2026-05-03")).hours), "7.0");
    EXPECT_EQ(text(exposure(atoms, evening("2026-05-01"), evening("2026-05-02")).hours), "2.0");
    EXPECT_EQ(text(exposure(atoms, before("2026-05-01"), before("2026-05-03")).hours), "3.0");
    const calendar::Moment riding{day("2026-05-02"), calendar::DayPart::Riding};
    EXPECT_EQ(text(exposure(atoms, riding, evening("2026-05-03")).hours), "4.0");
    EXPECT_EQ(text(exposure(atoms, std::nullopt, riding).hours), "3.0");
}

TEST(ExposureTest, AddsUpEveryCounter) {
    Made make;
    UseFacts facts;
    facts.outings = {make.race("2026-05-01", "1", 2), make.race("2026-05-02", "2", 3)};
    facts.outings[0].distance = made::km("10");
    facts.outings[1].distance = made::km("20");
    facts.washes = {make.wash("2026-05-01", true), make.wash("2026-05-02")};
    facts.crashes = {make.crash("2026-05-01"), make.crash("2026-05-02")};
    const auto atoms = atomsOf(facts);
    Exposure expected;
    expected.hours = HoursBracket::exactly(hours("3"));
    expected.distance = MetresBracket::exactly(made::km("30"));
    expected.outings = 2;
    expected.starts = 5;
    expected.washes = 2;
    expected.pressureWashes = 1;
    expected.crashes = 2;
    EXPECT_EQ(exposure(atoms, std::nullopt, evening("2026-05-02")), expected);
    Exposure sum = exposure(atoms, std::nullopt, evening("2026-05-01"));
    sum += exposure(atoms, evening("2026-05-01"), evening("2026-05-02"));
    EXPECT_EQ(sum, expected);
}

TEST(ExposureTest, MudDaysAreDays) {
    // Two outings in the mud of the 1st, one on the 2nd, a dry one on the 3rd: two mud days.
    Made make;
    UseFacts facts;
    facts.outings = {
        make.outing("2026-05-01", "1", Ground::Mud), make.outing("2026-05-01", "1", Ground::Water),
        make.outing("2026-05-02", "1", Ground::Mud), make.outing("2026-05-03", "1", Ground::Hard)};
    const auto atoms = atomsOf(facts);
    const auto first = exposure(atoms, std::nullopt, evening("2026-05-01"));
    EXPECT_EQ(first.mudDays, 1);
    auto sum = first;
    sum += exposure(atoms, evening("2026-05-01"), evening("2026-05-03"));
    EXPECT_EQ(sum.mudDays, 2);
    EXPECT_EQ(sum.outings, 4);
}

TEST(ExposureTest, RidingTimesLieBetweenTheMomentsOfTwoDays) {
    EXPECT_EQ(ridingTimes(evening("2026-05-01"), evening("2026-05-01")), 0);
    EXPECT_EQ(ridingTimes(before("2026-05-01"), evening("2026-05-01")), 1);
    EXPECT_EQ(ridingTimes(evening("2026-05-01"), before("2026-05-02")), 0);
    EXPECT_EQ(ridingTimes(evening("2026-05-01"), evening("2026-05-08")), 7);
    EXPECT_EQ(ridingTimes({day("2026-05-01"), calendar::DayPart::Riding}, evening("2026-05-02")), 1);
    EXPECT_EQ(ridingTimes(evening("2026-05-08"), evening("2026-05-01")), 0);
}

TEST(ExposureTest, AStraddlingStretchIsABracketThatAddsUpInTheBest) {
    // 5 h somewhere in the 7 days from Friday the 1st to Friday the 8th. Cut after Sunday the 3rd: 2 of 7
    // days: 500 x 2/7 = 142.86 -> 1.43 h before, 5 - 1.43 = 3.57 h after.
    const std::vector<Atom> atoms{unlogged("2026-05-01", "2026-05-08", "5")};
    const auto first = exposure(atoms, std::nullopt, evening("2026-05-03")).hours;
    const auto second = exposure(atoms, evening("2026-05-03"), evening("2026-06-01")).hours;
    EXPECT_EQ(text(first), "0.0..1.43..5.0");
    EXPECT_EQ(text(second), "0.0..3.57..5.0");
    EXPECT_EQ(text(exposure(atoms, evening("2026-05-01"), evening("2026-05-08")).hours), "5.0");
    EXPECT_EQ(text(exposure(atoms, evening("2026-05-08"), evening("2026-06-01")).hours), "0.0");
    EXPECT_EQ(text(exposure(atoms, std::nullopt, evening("2026-05-01")).hours), "0.0");
    // 2.5 h in the first half of 2 days: halves go up.
    const std::vector<Atom> odd{unlogged("2026-05-01", "2026-05-03", "0.05")};
    EXPECT_EQ(text(exposure(odd, std::nullopt, evening("2026-05-02")).hours), "0.0..0.03..0.05");
}

TEST(ExposureTest, ACutWithNoRidingOnOneSideIsNoCut) {
    const std::vector<Atom> atoms{unlogged("2026-05-01", "2026-05-08", "5")};
    EXPECT_EQ(text(exposure(atoms, before("2026-05-02"), evening("2026-05-08")).hours), "5.0");
    EXPECT_EQ(text(exposure(atoms, std::nullopt, {day("2026-05-08"), calendar::DayPart::Riding}).hours),
              "5.0");
    EXPECT_EQ(text(exposure(atoms, std::nullopt, before("2026-05-02")).hours), "0.0");
}

TEST(ExposureTest, AStretchWithoutARidingTimeStandsAtItsEnd) {
    Atom garage = unlogged("2026-05-01", "2026-05-01", "0.2");  // read twice in one evening
    EXPECT_EQ(text(exposure({&garage, 1}, std::nullopt, evening("2026-05-01")).hours), "0.2");
    EXPECT_EQ(text(exposure({&garage, 1}, before("2026-05-01"), evening("2026-05-01")).hours), "0.2");
    EXPECT_FALSE(partOf(garage, evening("2026-05-01"), evening("2026-05-02")).has_value());
    EXPECT_FALSE(partOf(garage, std::nullopt, before("2026-05-01")).has_value());
    garage.to = before("2026-05-02");
    EXPECT_EQ(text(exposure({&garage, 1}, evening("2026-05-01"), before("2026-05-02")).hours), "0.2");
}

TEST(ExposureTest, TwoPartsOfOneStretchAreNeverMoreThanTheWhole) {
    // A wheel was on for days 1-2 and 5-6 of a stretch of 6 h over 6 days: 2 + 2 h in the best, at most 6 in
    // all.
    const Atom whole = unlogged("2026-05-01", "2026-05-07", "6");
    std::vector<Atom> parts{*partOf(whole, std::nullopt, evening("2026-05-03")),
                            *partOf(whole, evening("2026-05-05"), evening("2026-05-07"))};
    EXPECT_EQ(text(exposure(parts, std::nullopt, evening("2026-06-01")).hours), "0.0..4.0..6.0");
    // Parts of two stretches are two.
    parts[1].source = 8;
    EXPECT_EQ(text(exposure(parts, std::nullopt, evening("2026-06-01")).hours), "0.0..4.0..12.0");
}

TEST(ExposureTest, PartsThatMakeUpTheWholeAreExactAgain) {
    // Off on the evening of the 3rd, on again on the morning of the 4th: no riding was missed.
    Atom whole = unlogged("2026-05-01", "2026-05-07", "6");
    whole.distance = MetresBracket::exactly(made::km("40"));
    const std::vector<Atom> parts{*partOf(whole, std::nullopt, evening("2026-05-03")),
                                  *partOf(whole, before("2026-05-04"), evening("2026-05-07"))};
    const auto sum = exposure(parts, std::nullopt, evening("2026-06-01"));
    EXPECT_EQ(text(sum.hours), "6.0");
    EXPECT_EQ(sum.distance, MetresBracket::exactly(made::km("40")));
    // A part of a part is shared out like a part of the whole: 0.05 h over six days, up to day 2 of 6 0.0167,
    // up to day 3 0.025, halves up: 0.03; so the third day has 0.01.
    const Atom small = unlogged("2026-05-01", "2026-05-07", "0.05");
    const Atom half = *partOf(small, std::nullopt, evening("2026-05-04"));
    EXPECT_EQ(text(half.hours), "0.0..0.03..0.05");
    EXPECT_EQ(text(partOf(half, evening("2026-05-03"), evening("2026-05-04"))->hours), "0.0..0.01..0.05");
    EXPECT_EQ(partOf(half, evening("2026-05-03"), evening("2026-05-04")),
              partOf(small, evening("2026-05-03"), evening("2026-05-04")));
}

TEST(ExposureTest, DistanceIsCutLikeHours) {
    Atom atom = unlogged("2026-05-01", "2026-05-05", "0");
    atom.distance = MetresBracket::exactly(made::km("40"));
    const auto cut = exposure({&atom, 1}, evening("2026-05-02"), evening("2026-05-05"));
    EXPECT_EQ(cut.distance, (MetresBracket{units::Metres{0}, made::km("30"), made::km("40")}));
    EXPECT_EQ(text(cut.hours), "0.0");
}

TEST(ExposureTest, AnUnknownPastLeavesTheHighEndOpen) {
    Atom past;
    past.kind = AtomKind::Past;
    past.to = past.from = before("2026-05-01");
    past.hours = {hours("41"), hours("80"), std::nullopt};
    past.distance.high.reset();
    EXPECT_EQ(text(exposure({&past, 1}, std::nullopt, evening("2026-05-02")).hours), "41.0..80.0..");
    EXPECT_EQ(text(exposure({&past, 1}, evening("2026-04-01"), evening("2026-05-02")).hours), "0.0..80.0..");
    EXPECT_EQ(text(exposure({&past, 1}, before("2026-05-01"), evening("2026-05-02")).hours), "0.0");
    past.distance = {made::km("1"), made::km("2"), made::km("3")};
    EXPECT_EQ(exposure({&past, 1}, evening("2026-04-01"), evening("2026-05-02")).distance,
              (MetresBracket{units::Metres{0}, made::km("2"), made::km("3")}));
}

// 2 h of mud at race pace x 2, 3 h of mud at another pace x 1.5, 1 h of sand x 1: 4 + 4.5 + 1 = 9.5 h. The
// first weight that fits counts, whatever comes after it.
TEST(WeightedHoursTest, TheFirstWeightThatFitsCounts) {
    made::Made make;
    UseFacts use;
    use.outings = {make.outing("2026-05-01", "2", Ground::Mud), make.outing("2026-05-02", "3", Ground::Mud),
                   make.outing("2026-05-03", "1", Ground::Sand)};
    use.outings[0].pace = Pace::Race;
    const auto atoms = atomsOf(use);
    const std::vector<HourWeight> weights{{.ground = Ground::Mud, .pace = Pace::Race, .permille = 2000},
                                          {.ground = Ground::Mud, .permille = 1500},
                                          {.pace = Pace::Race, .permille = 9000}};
    const auto fine = weightedHours(atoms, weights, std::nullopt, evening("2026-05-03"));
    EXPECT_EQ(fine, WeightedBracket::exactly(950'000));
    EXPECT_EQ(text(roundedHours(fine)), "9.5");
    EXPECT_EQ(text(exposure(atoms, std::nullopt, evening("2026-05-03")).hours), "6.0") << "raw stays raw";
}

// Three times 0.01 h x 0.5: rounded one by one 0.01 + 0.01 + 0.01 = 0.03 h, the sum is 0.015 h and rounds to
// 0.02.
TEST(WeightedHoursTest, AreRoundedOnceAfterTheSum) {
    made::Made make;
    UseFacts use;
    use.outings = {make.outing("2026-05-01", "0.01", Ground::Hard),
                   make.outing("2026-05-02", "0.01", Ground::Hard),
                   make.outing("2026-05-03", "0.01", Ground::Hard)};
    const std::vector<HourWeight> half{{.ground = Ground::Hard, .permille = 500}};
    const auto fine = weightedHours(atomsOf(use), half, std::nullopt, evening("2026-05-03"));
    EXPECT_EQ(fine.best, 1'500);
    EXPECT_EQ(roundedHours(fine).best, units::Hours{2});
}

// What the meter saw and nobody noted has no ground: only a weight for any ground, or for the unstated one,
// fits. What was before the file counts as it was stated.
TEST(WeightedHoursTest, UnloggedHoursHaveNoGroundAndAPastStaysAsStated) {
    made::Made make;
    UseFacts use;
    use.hourReadings = {make.reading("2026-05-01", "0"), make.reading("2026-05-08", "4")};
    const auto atoms = items::withPast(made::usedMachine("2026-05-01", "10", "20", "30"), atomsOf(use));
    const auto counted = [&](HourWeight weight) {
        const std::vector<HourWeight> weights{weight};
        return text(roundedHours(weightedHours(atoms, weights, std::nullopt, evening("2026-05-08"))));
    };
    EXPECT_EQ(counted({.ground = Ground::Mud, .permille = 3000}), "14.0..24.0..34.0");
    EXPECT_EQ(counted({.ground = Ground::Unstated, .permille = 3000}), "22.0..32.0..42.0");
    EXPECT_EQ(counted({.permille = 500}), "12.0..22.0..32.0");
}

}  // namespace
}  // namespace wm::usage
