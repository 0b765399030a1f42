// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/items/fittings.h"

#include <gtest/gtest.h>

#include "tests/core/items/cast.h"
#include "tests/core/made.h"

namespace wm::items {
namespace {

using base::Error;
using base::Fault;
using made::before;
using made::evening;
using made::Made;

constexpr ItemId kRings{3};
constexpr ItemId kSpare{4};

class FittingsTest : public testing::Test {
  protected:
    Made make;
    std::vector<Move> moves;

    void fit(ItemId item, MachineId machine, std::string position, calendar::Moment when) {
        moves.push_back(make.fit(item, machine, std::move(position), when));
    }
    void fit(ItemId item, ItemId parent, std::string position, calendar::Moment when) {
        moves.push_back(make.fit(item, parent, std::move(position), when));
    }
    void put(ItemId item, MoveKind kind, calendar::Moment when) {
        moves.push_back(make.move(item, kind, when));
    }
    // "red engine/piston 2026-05-01 to 2026-05-09", open ends left out.
    std::vector<std::string> carried(ItemId item) {
        std::vector<std::string> result;
        for (const MachineSpell& spell : Fittings(moves).machineSpells(item))
            result.push_back((spell.machine == kRed ? "red " : "blue ") + spell.path + " " +
                             spell.from.date.iso() + (spell.to ? " to " + spell.to->date.iso() : ""));
        return result;
    }
    Error refusal(const Move& move) {
        const auto result = Fittings(moves).check(move);
        return result ? Error{Fault::NothingToDo, "accepted", {}, {}} : result.error();
    }
};

using Lines = std::vector<std::string>;

TEST_F(FittingsTest, KnowsWhereAnItemWasWhen) {
    put(kEngine, MoveKind::Removed, evening("2026-05-09"));
    fit(kEngine, kRed, "engine", before("2026-05-01"));
    const Fittings fittings(moves);
    EXPECT_FALSE(fittings.placeOf(kEngine, evening("2026-04-30")));
    EXPECT_EQ(fittings.placeOf(kEngine, before("2026-05-01"))->position, "engine");
    EXPECT_EQ(fittings.placeOf(kEngine, before("2026-05-09"))->machine, kRed);
    EXPECT_EQ(fittings.placeOf(kEngine, evening("2026-05-09"))->kind, MoveKind::Removed);
    ASSERT_EQ(fittings.spells(kEngine).size(), 2U);
    EXPECT_EQ(fittings.spells(kEngine)[0].to, evening("2026-05-09"));
    EXPECT_EQ(fittings.spells(kEngine)[0].move, 2);
    EXPECT_TRUE(fittings.spells(kPiston).empty());
}

TEST_F(FittingsTest, ChildrenMoveWithTheirParents) {
    // The piston goes into the engine on the 3rd; the engine is in the red one from the 1st to the 9th, in
    // the blue one from the 12th; the piston comes out on the 20th.
    fit(kEngine, kRed, "engine", before("2026-05-01"));
    fit(kPiston, kEngine, "piston", evening("2026-05-03"));
    fit(kRings, kPiston, "rings", evening("2026-05-02"));
    put(kEngine, MoveKind::Removed, evening("2026-05-09"));
    fit(kEngine, kBlue, "engine", before("2026-05-12"));
    put(kPiston, MoveKind::Removed, evening("2026-05-20"));
    EXPECT_EQ(carried(kPiston), (Lines{"red engine/piston 2026-05-03 to 2026-05-09",
                                       "blue engine/piston 2026-05-12 to 2026-05-20"}));
    EXPECT_EQ(carried(kRings), (Lines{"red engine/piston/rings 2026-05-03 to 2026-05-09",
                                      "blue engine/piston/rings 2026-05-12 to 2026-05-20"}));
    EXPECT_EQ(carried(kEngine), (Lines{"red engine 2026-05-01 to 2026-05-09", "blue engine 2026-05-12"}));
    EXPECT_EQ(carried(kSpare), Lines{});
}

TEST_F(FittingsTest, AChildCanGoOnAlone) {
    fit(kEngine, kRed, "engine", before("2026-05-01"));
    fit(kPiston, kEngine, "piston", before("2026-05-01"));
    put(kPiston, MoveKind::Removed, evening("2026-05-05"));
    fit(kSpare, kBlue, "engine", before("2026-05-01"));
    fit(kPiston, kSpare, "piston", evening("2026-05-06"));
    EXPECT_EQ(carried(kPiston),
              (Lines{"red engine/piston 2026-05-01 to 2026-05-05", "blue engine/piston 2026-05-06"}));
}

TEST_F(FittingsTest, FindsWhatSitsAtAPath) {
    fit(kEngine, kRed, "engine", before("2026-05-01"));
    fit(kPiston, kEngine, "piston", evening("2026-05-03"));
    put(kEngine, MoveKind::Removed, evening("2026-05-09"));
    const Fittings fittings(moves);
    EXPECT_EQ(fittings.at(kRed, "engine/piston", evening("2026-05-03")), kPiston);
    EXPECT_EQ(fittings.at(kRed, "engine/piston", before("2026-05-03")), std::nullopt);
    EXPECT_EQ(fittings.at(kRed, "engine", before("2026-05-03")), kEngine);
    EXPECT_EQ(fittings.at(kRed, "engine", before("2026-05-09")), kEngine);
    EXPECT_EQ(fittings.at(kRed, "engine", evening("2026-05-09")), std::nullopt);
    EXPECT_EQ(fittings.at(kRed, "engine", evening("2026-04-09")), std::nullopt);
    EXPECT_EQ(fittings.at(kRed, "", evening("2026-05-03")), std::nullopt);
    EXPECT_EQ(fittings.at(kBlue, "engine", evening("2026-05-03")), std::nullopt);
    EXPECT_EQ(fittings.at(kRed, "wheel", evening("2026-05-03")), std::nullopt);
}

TEST_F(FittingsTest, ListsWhatSitsOnAMachineOrItem) {
    using On = std::vector<std::pair<std::string, ItemId>>;
    fit(kSpare, kRed, "rear wheel", before("2026-05-01"));
    fit(kEngine, kRed, "engine", before("2026-05-01"));
    fit(kPiston, kEngine, "piston", evening("2026-05-03"));
    put(kSpare, MoveKind::Away, evening("2026-05-04"));
    const Fittings fittings(moves);
    EXPECT_EQ(fittings.on(kRed, before("2026-05-04")), (On{{"engine", kEngine}, {"rear wheel", kSpare}}));
    EXPECT_EQ(fittings.on(kRed, evening("2026-05-04")), (On{{"engine", kEngine}}));
    EXPECT_EQ(fittings.on(kEngine, evening("2026-05-04")), (On{{"piston", kPiston}}));
    EXPECT_EQ(fittings.on(kBlue, evening("2026-05-04")), On{});
}

TEST_F(FittingsTest, TwoSwapsInOneEveningLeaveTheLast) {
    fit(kEngine, kRed, "engine", evening("2026-05-01"));
    fit(kSpare, kRed, "engine", evening("2026-05-05"));  // tried ...
    moves.push_back(make.move(kEngine, MoveKind::Removed, evening("2026-05-05")));
    moves.push_back(make.move(kSpare, MoveKind::Removed, evening("2026-05-05")));
    fit(kPiston, kRed, "engine", evening("2026-05-05"));  // ... and thought better of
    EXPECT_EQ(Fittings(moves).at(kRed, "engine", evening("2026-05-05")), kPiston);
    EXPECT_EQ(carried(kSpare), Lines{});
}

TEST_F(FittingsTest, RefusesAnItemInTwoPlaces) {
    fit(kEngine, kRed, "engine", before("2026-05-01"));
    EXPECT_EQ(refusal(make.fit(kEngine, kBlue, "engine", evening("2026-05-05"))),
              (Error{Fault::InTwoPlaces, "item", "", ""}));
    EXPECT_EQ(refusal(make.fit(kEngine, kBlue, "engine", before("2026-04-05"))),
              (Error{Fault::OutOfOrder, "date", "2026-04-05", "2026-05-01"}));
    put(kEngine, MoveKind::Removed, evening("2026-05-04"));
    EXPECT_EQ(refusal(make.fit(kEngine, kBlue, "engine", evening("2026-05-04"))).field, "accepted");
}

TEST_F(FittingsTest, RefusesATakenPosition) {
    fit(kEngine, kRed, "engine", before("2026-05-01"));
    EXPECT_EQ(refusal(make.fit(kSpare, kRed, "engine", evening("2026-05-05"))),
              (Error{Fault::PositionTaken, "position", "engine", "2026-05-01"}));
    EXPECT_EQ(refusal(make.fit(kSpare, kRed, "engine", evening("2026-04-05"))).fault, Fault::PositionTaken)
        << "it would still sit there when the other one is fitted";
    EXPECT_EQ(refusal(make.fit(kSpare, kRed, "rear wheel", evening("2026-05-05"))).field, "accepted");
    EXPECT_EQ(refusal(make.fit(kSpare, kBlue, "engine", evening("2026-05-05"))).field, "accepted");
    put(kEngine, MoveKind::Removed, evening("2026-05-05"));
    EXPECT_EQ(refusal(make.fit(kSpare, kRed, "engine", evening("2026-05-05"))).field, "accepted");
    EXPECT_EQ(refusal(make.fit(kSpare, kRed, "engine", before("2026-05-05"))).fault, Fault::PositionTaken);
    // An earlier stay that ends before the other one comes is free.
    put(kSpare, MoveKind::Away, before("2026-05-01"));
    EXPECT_EQ(refusal(make.fit(kSpare, kRed, "engine", evening("2026-04-05"))).field, "accepted");
}

TEST_F(FittingsTest, APositionThatWasOnlyTriedInPassingIsFree) {
    fit(kEngine, kRed, "engine", evening("2026-05-05"));
    put(kEngine, MoveKind::Removed, evening("2026-05-05"));
    EXPECT_EQ(refusal(make.fit(kSpare, kRed, "engine", evening("2026-05-01"))).field, "accepted");
}

TEST_F(FittingsTest, RefusesAnItemInsideItself) {
    fit(kPiston, kEngine, "piston", before("2026-05-01"));
    fit(kRings, kPiston, "rings", before("2026-05-01"));
    EXPECT_EQ(refusal(make.fit(kEngine, kEngine, "self", evening("2026-05-05"))),
              (Error{Fault::Cycle, "parent", "", ""}));
    EXPECT_EQ(refusal(make.fit(kEngine, kRings, "land", evening("2026-05-05"))).fault, Fault::Cycle);
    EXPECT_EQ(refusal(make.fit(kEngine, kRings, "land", evening("2026-04-05"))).fault, Fault::Cycle)
        << "it would still be there when the piston goes into it";
    put(kPiston, MoveKind::Removed, evening("2026-05-04"));
    EXPECT_EQ(refusal(make.fit(kEngine, kRings, "land", evening("2026-05-04"))).field, "accepted");
    EXPECT_EQ(refusal(make.fit(kEngine, kSpare, "frame", evening("2026-05-04"))).field, "accepted");
}

TEST_F(FittingsTest, CirclesFromElsewhereEndSomewhere) {
    fit(kPiston, kEngine, "piston", before("2026-05-01"));
    fit(kEngine, kPiston, "engine", before("2026-05-01"));
    EXPECT_EQ(carried(kPiston), Lines{});
    EXPECT_EQ(refusal(make.fit(kRings, kPiston, "rings", evening("2026-05-05"))).field, "accepted");
}

TEST_F(FittingsTest, RefusesWhatIsRetired) {
    put(kEngine, MoveKind::Retired, evening("2026-05-05"));
    EXPECT_EQ(refusal(make.fit(kEngine, kRed, "engine", evening("2026-05-06"))),
              (Error{Fault::Retired, "item", "", ""}));
    EXPECT_EQ(refusal(make.fit(kPiston, kEngine, "piston", evening("2026-05-06"))),
              (Error{Fault::Retired, "parent", "", ""}));
    EXPECT_EQ(refusal(make.fit(kPiston, kEngine, "piston", evening("2026-05-04"))).field, "accepted");
    EXPECT_EQ(refusal(make.move(kEngine, MoveKind::Retired, evening("2026-05-04"))).fault, Fault::OutOfOrder);
}

TEST_F(FittingsTest, RefusesToRemoveWhatIsNotFitted) {
    EXPECT_EQ(refusal(make.move(kEngine, MoveKind::Removed, evening("2026-05-06"))),
              (Error{Fault::NotFitted, "item", "", ""}));
    put(kEngine, MoveKind::Away, evening("2026-05-01"));
    EXPECT_EQ(refusal(make.move(kEngine, MoveKind::Removed, evening("2026-05-06"))).field, "accepted")
        << "back from the workshop";
    put(kEngine, MoveKind::Removed, evening("2026-05-06"));
    EXPECT_EQ(refusal(make.move(kEngine, MoveKind::Removed, evening("2026-05-07"))).fault, Fault::NotFitted);
    EXPECT_EQ(refusal(make.move(kEngine, MoveKind::Removed, evening("2026-05-05"))).fault, Fault::OutOfOrder);
}

TEST_F(FittingsTest, AFittingNamesOnePlace) {
    auto move = make.fit(kEngine, kRed, "", before("2026-05-01"));
    EXPECT_EQ(refusal(move), (Error{Fault::Malformed, "position", "", ""}));
    move.position = "engine/piston";
    EXPECT_EQ(refusal(move).fault, Fault::Malformed);
    move.position = "engine";
    move.parent = kSpare;
    EXPECT_EQ(refusal(move).fault, Fault::Malformed);
    move.parent.reset();
    move.machine.reset();
    EXPECT_EQ(refusal(move).fault, Fault::Malformed);
}

}  // namespace
}  // namespace wm::items
