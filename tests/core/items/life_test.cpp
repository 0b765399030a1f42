// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What went through an item while it was fitted.
#include <gtest/gtest.h>

#include "tests/core/items/cast.h"
#include "tests/core/made.h"

namespace wm::items {
namespace {

using made::before;
using made::day;
using made::evening;
using made::Made;
using made::text;

constexpr ItemId kWheel{3};

class LifeTest : public testing::Test {
  protected:
    Made make;
    std::vector<Move> moves;
    usage::UseFacts red;
    usage::UseFacts blue;

    std::vector<usage::Atom> atoms(const Item& item) {
        const auto redAtoms = usage::atomsOf(red);
        const auto blueAtoms = usage::atomsOf(blue);
        return atomsOf(item, Fittings(moves), [&](MachineId machine) {
            return std::span<const usage::Atom>(machine == kRed ? redAtoms : blueAtoms);
        });
    }
    std::string life(const Item& item, std::string_view on = "2026-12-31") {
        return text(usage::exposure(atoms(item), std::nullopt, evening(on)).hours);
    }
};

TEST_F(LifeTest, HoursFollowThePartNotTheMachine) {
    // Red: 2 h on the 2nd, 3 h on the 6th. Blue: 4 h on the 7th. The engine goes over on the evening of the
    // 5th: 2 + 4 = 6 h.
    red.outings = {make.outing("2026-05-02", "2"), make.outing("2026-05-06", "3")};
    blue.outings = {make.outing("2026-05-07", "4"), make.outing("2026-05-03", "8")};
    moves = {make.fit(kEngine, kRed, "engine", before("2026-05-01")),
             make.move(kEngine, MoveKind::Removed, evening("2026-05-05")),
             make.fit(kEngine, kBlue, "engine", evening("2026-05-05"))};
    EXPECT_EQ(life(made::newItem(kEngine, "2026-05-01")), "6.0");
    EXPECT_EQ(life(made::newItem(kEngine, "2026-05-01"), "2026-05-06"), "2.0");
}

TEST_F(LifeTest, ADayBelongsToWhatWasFittedForItsRiding) {
    red.outings = {make.outing("2026-05-02", "2")};
    red.washes = {make.wash("2026-05-02")};
    // Fitted that evening: neither the riding nor the wash before the work.
    moves = {make.fit(kWheel, kRed, "rear wheel", evening("2026-05-02"))};
    EXPECT_TRUE(atoms(made::newItem(kWheel, "2026-05-01")).empty());
    // Fitted that morning: both; taken off that evening: still both.
    moves = {make.fit(kWheel, kRed, "rear wheel", before("2026-05-02")),
             make.move(kWheel, MoveKind::Removed, evening("2026-05-02"))};
    EXPECT_EQ(atoms(made::newItem(kWheel, "2026-05-01")).size(), 2U);
    EXPECT_EQ(life(made::newItem(kWheel, "2026-05-01")), "2.0");
}

TEST_F(LifeTest, AnUnloggedStretchIsCutIntoABracket) {
    // 6 h unlogged over the 6 days from the 1st to the 7th; the wheel was on from the evening of the 3rd: 4
    // of 6 days: 0 to 6, likely 4 h. What was on before has the other 2.
    red.hourReadings = {make.reading("2026-05-01", "10"), make.reading("2026-05-07", "16")};
    moves = {make.fit(kWheel, kRed, "rear wheel", evening("2026-05-03"))};
    EXPECT_EQ(life(made::newItem(kWheel, "2026-05-01")), "0.0..4.0..6.0");
    moves = {make.fit(kWheel, kRed, "rear wheel", before("2026-05-01")),
             make.move(kWheel, MoveKind::Removed, evening("2026-05-03"))};
    EXPECT_EQ(life(made::newItem(kWheel, "2026-05-01")), "0.0..2.0..6.0");
}

TEST_F(LifeTest, OffAndOnAgainWithoutRidingCutsNothing) {
    red.hourReadings = {make.reading("2026-05-01", "10"), make.reading("2026-05-07", "16")};
    moves = {make.fit(kWheel, kRed, "rear wheel", before("2026-05-01")),
             make.move(kWheel, MoveKind::Removed, evening("2026-05-03")),
             make.fit(kWheel, kRed, "rear wheel", evening("2026-05-03"))};
    EXPECT_EQ(life(made::newItem(kWheel, "2026-05-01")), "6.0");
    // Off for a day that may have been ridden: days 1-2 and 4-6 of 6, 5 h likely, never more than 6.
    moves[2] = make.fit(kWheel, kRed, "rear wheel", evening("2026-05-04"));
    EXPECT_EQ(life(made::newItem(kWheel, "2026-05-01")), "0.0..5.0..6.0");
    EXPECT_EQ(atoms(made::newItem(kWheel, "2026-05-01")).size(), 2U);
}

TEST_F(LifeTest, APistonThatChangesEnginesWithinOneMachineIsNotCut) {
    constexpr ItemId other{9};
    red.hourReadings = {make.reading("2026-05-01", "10"), make.reading("2026-05-07", "16")};
    moves = {make.fit(kEngine, kRed, "engine", before("2026-05-01")),
             make.fit(kPiston, kEngine, "piston", before("2026-05-01")),
             make.move(kEngine, MoveKind::Removed, evening("2026-05-03")),
             make.move(kPiston, MoveKind::Removed, evening("2026-05-03")),
             make.fit(other, kRed, "engine", evening("2026-05-03")),
             make.fit(kPiston, other, "piston", evening("2026-05-03"))};
    EXPECT_EQ(life(made::newItem(kPiston, "2026-05-01")), "6.0");
}

TEST_F(LifeTest, AtomsOfTwoMachinesStandInOrder) {
    red.outings = {make.outing("2026-05-02", "1"), make.outing("2026-05-20", "1")};
    blue.outings = {make.outing("2026-05-10", "1")};
    moves = {make.fit(kWheel, kRed, "rear wheel", before("2026-05-01")),
             make.move(kWheel, MoveKind::Removed, evening("2026-05-05")),
             make.fit(kWheel, kBlue, "rear wheel", evening("2026-05-05")),
             make.move(kWheel, MoveKind::Removed, evening("2026-05-15")),
             make.fit(kWheel, kRed, "rear wheel", evening("2026-05-15"))};
    const auto all = atoms(made::newItem(kWheel, "2026-05-01"));
    ASSERT_EQ(all.size(), 3U);
    EXPECT_EQ(all[1].to.date, day("2026-05-10"));
    EXPECT_EQ(all[2].to.date, day("2026-05-20"));
}

TEST_F(LifeTest, APastIsCarriedIn) {
    red.outings = {make.outing("2026-05-02", "2")};
    moves = {make.fit(kWheel, kRed, "rear wheel", before("2026-05-01"))};
    EXPECT_EQ(life(made::usedItem(kWheel, "2026-05-01", "30", "40", "60")), "32.0..42.0..62.0");
    EXPECT_EQ(life(made::usedItem(kWheel, "2026-05-01", "30", "40", "")), "32.0..42.0..");
    const auto all = atoms(made::usedItem(kWheel, "2026-05-01", "30", "40", ""));
    EXPECT_EQ(all[0].kind, usage::AtomKind::Past);
    EXPECT_EQ(all[0].known, usage::Known::Past);
    EXPECT_EQ(all[0].source, kWheel.value());
    EXPECT_FALSE(all[0].distance.high) << "nobody stated how far it went";
}

TEST_F(LifeTest, AMachineHasItsPastInFront) {
    red.outings = {make.outing("2026-05-02", "2")};
    const auto atoms = usage::atomsOf(red);
    auto machine = made::usedMachine("2026-05-01", "41", "80", "");
    const auto all = withPast(machine, atoms);
    ASSERT_EQ(all.size(), 2U);
    EXPECT_EQ(all[0].kind, usage::AtomKind::Past);
    EXPECT_EQ(text(usage::exposure(all, std::nullopt, evening("2026-05-02")).hours), "43.0..82.0..");
    machine.startedNew = true;
    EXPECT_EQ(withPast(machine, atoms), atoms);
}

}  // namespace
}  // namespace wm::items
