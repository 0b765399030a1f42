// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/move_verbs.h"

#include "core/book/fitting.h"
#include "core/book/joint_owners.h"
#include "core/book/state.h"
#include "tests/core/verbs/bench.h"

namespace wm::verbs {
namespace {

using base::Fault;
using items::MoveKind;
using items::Told;

class MoveVerbsTest : public testing::Test, public FurnishedBench {
  public:
    ItemId addItem(const char* name, const char* kind) {
        must(saying(saveItem,
                    items::Item{.name = name, .kind = kind, .since = day("2026-02-01"), .startedNew = true}));
        return last<items::Item>();
    }
    [[nodiscard]] items::Move fit(ItemId item, const char* on, const char* position = "rear wheel") const {
        return {.item = item,
                .date = day(on),
                .kind = MoveKind::Fitted,
                .machine = heron,
                .position = position,
                .told = Told::Work};
    }
    [[nodiscard]] items::Move off(ItemId item, const char* on, MoveKind kind = MoveKind::Removed) const {
        return {.item = item, .date = day(on), .kind = kind, .told = Told::Work};
    }
    [[nodiscard]] std::size_t looseOn() const { return book().handTight(heron).size(); }
};

TEST_F(MoveVerbsTest, WhatIsOutIsNoneOfTheJointsToTorque) {
    const upkeep::TaskVersion chain{.machine = heron, .name = "Chain kit"};
    const calendar::Moment evening{day("2026-05-01"), calendar::DayPart::AfterRiding};
    const auto codes = [&] {
        std::vector<std::string> found;
        for (const auto* joint : book::jointsToTorque(book(), chain, {"rear-wheel"}, evening))
            found.push_back(joint->code);
        return found;
    };
    EXPECT_EQ(codes(), std::vector<std::string>{"axle"});
    must(saying(moveItem, off(wheel, "2026-05-01")));
    EXPECT_EQ(codes(), std::vector<std::string>{}) << "a hand could tick it, and would be refused";
    must(saying(moveItem, fit(wheel, "2026-05-01")));
    EXPECT_EQ(codes(), std::vector<std::string>{"axle"});
}

TEST_F(MoveVerbsTest, WorkLoosensWhatHoldsThePosition) {
    must(saying(moveItem, off(wheel, "2026-05-01")));
    const auto apart = book::stateOf(book(), heron);
    EXPECT_EQ(apart.gaps.size(), 1U);
    ASSERT_EQ(apart.out.size(), 1U);
    EXPECT_EQ(apart.out[0].joint->joint, axle);
    EXPECT_EQ(looseOn(), 0U) << "nothing is there to be torqued";
    EXPECT_EQ(
        refused(saying(markJoints,
                       {{.joint = axle, .date = day("2026-05-01"), .kind = fastening::MarkKind::Confirmed}})),
        (base::Error{Fault::IsOut, "marks[0].joint", "rear axle nut", "rear wheel"}));
    must(saying(moveItem, fit(wheel, "2026-05-02")));
    EXPECT_EQ(looseOn(), 1U);
    must(saying(markJoints,
                {{.joint = axle, .date = day("2026-05-02"), .kind = fastening::MarkKind::Confirmed}}));
    EXPECT_TRUE(book::stateOf(book(), heron).handTight.empty());
}

TEST_F(MoveVerbsTest, WhatSatThereAlreadyLoosensNothing) {
    auto move = off(wheel, "2026-05-01");
    move.told = Told::AsItWas;
    must(saying(moveItem, move));
    EXPECT_EQ(looseOn(), 0U);
}

TEST_F(MoveVerbsTest, OfADayThatWasRiddenSinceNobodyCanSayIt) {
    must(ride({.outing = outing("2026-05-10", 100)}));
    must(saying(swapItem, fit(addItem("mud wheel", "rear wheel"), "2026-05-01"), MoveKind::Removed));
    EXPECT_EQ(ledger().all<items::Move>().back().told, Told::Unasked);
    EXPECT_EQ(looseOn(), 0U);
    const auto doubts = book::stateOf(book(), heron).doubts;
    ASSERT_EQ(doubts.size(), 1U);
    EXPECT_EQ(doubts[0].why, book::Doubting::OlderMoves);
    EXPECT_EQ(doubts[0].joints, std::vector{axle});
}

TEST_F(MoveVerbsTest, FittingKnowsKinds) {
    const ItemId front = addItem("front wheel B", "front wheel");
    must(saying(moveItem, off(wheel, "2026-05-01")));
    EXPECT_EQ(refusedAt(saying(moveItem, fit(front, "2026-05-02"))), At(Fault::WrongKind, "item"));
    must(saying(moveItem, fit(front, "2026-05-02", "front wheel")));
    must(saying(moveItem, fit(addItem("whatever", "odd thing"), "2026-05-02")));
}

TEST_F(MoveVerbsTest, WhatSitsElsewhereComesOffThereFirst) {
    must(saying(saveMachine,
                items::Machine{.name = "Plover", .since = day("2026-02-01"), .startedNew = true}));
    const MachineId plover = last<items::Machine>();
    auto move = fit(wheel, "2026-05-01");
    move.machine = plover;
    EXPECT_EQ(refused(saying(moveItem, move)).fault, Fault::InTwoPlaces);
    must(saying(fitItem, FitDraft{.move = move, .fromElsewhere = true}));
    EXPECT_EQ(book().fittings().at(plover, "rear wheel", {day("2026-05-01")}), wheel);
    EXPECT_EQ(book::stateOf(book(), heron).out.size(), 1U);
    EXPECT_EQ(refusedAt(saying(fitItem, FitDraft{.move = move, .fromElsewhere = true})),
              At(Fault::NothingToDo, "item"));
}

TEST_F(MoveVerbsTest, ASetMovesInOneVerb) {
    const ItemId rear = addItem("sand, rear", "rear wheel");
    const ItemId front = addItem("sand, front", "front wheel");
    const FitDraft first{.move = fit(rear, "2026-05-01"), .oldGoesTo = MoveKind::Removed};
    const FitDraft second{.move = fit(front, "2026-05-01", "front wheel"), .fromElsewhere = true};
    auto wrong = second;
    wrong.move.position = "engine";
    EXPECT_EQ(refusedAt(saying(fitSet, {first, wrong})), At(Fault::WrongKind, "moves[1].item"));
    EXPECT_EQ(must(saying(fitSet, {first, second})), "fitted 2 items");
    EXPECT_EQ(book().fittings().at(heron, "rear wheel", {day("2026-05-01")}), rear);
    EXPECT_EQ(book().fittings().at(heron, "front wheel", {day("2026-05-01")}), front);
    EXPECT_EQ(refusedAt(saying(fitSet, {})), At(Fault::NothingToDo, "moves"));
}

TEST_F(MoveVerbsTest, OnlyWhatWasSentAwayComesBackOnADay) {
    auto move = off(wheel, "2026-05-01", MoveKind::Away);
    move.note = "Lane Suspension";
    move.backOn = day("2026-04-30");
    EXPECT_EQ(refusedAt(saying(moveItem, move)), At(Fault::OutOfOrder, "back_on"));
    move.backOn = day("2026-06-30");
    must(saying(moveItem, move));
    const auto gaps = book::stateOf(book(), heron).gaps;
    ASSERT_EQ(gaps.size(), 1U);
    EXPECT_TRUE(gaps[0].isAway);
    EXPECT_EQ(gaps[0].backOn, day("2026-06-30"));
    EXPECT_EQ(gaps[0].where, "Lane Suspension");
    move = fit(wheel, "2026-05-02");
    move.backOn = day("2026-06-30");
    must(saying(moveItem, move));
    EXPECT_EQ(ledger().all<items::Move>().back().backOn, std::nullopt);
}

TEST_F(MoveVerbsTest, OffersWhatFitsFromTheShelfFirst) {
    must(saying(saveMachine,
                items::Machine{.name = "Plover", .since = day("2026-02-01"), .startedNew = true}));
    const ItemId spare = addItem("spare wheel", "rear wheel");
    addItem("front wheel B", "front wheel");
    const auto fits = book::whatFits(
        book(), {.date = day("2026-05-01"), .machine = last<items::Machine>(), .position = "rear wheel"});
    // The engine and the wheel of the bench have no kind: nobody knows that they don't fit.
    ASSERT_EQ(fits.size(), 3U);
    EXPECT_EQ(fits[0].item->id, spare);
    EXPECT_EQ(fits[0].lies, MoveKind::Removed);
    EXPECT_EQ(fits[2].item->id, wheel);
    EXPECT_EQ(fits[2].on, heron);
}

TEST_F(MoveVerbsTest, SomethingWithAPastAtAPlaceThatNobodyTrackedSatThere) {
    must(saying(saveItem, items::Item{.name = "old fork", .since = day("2026-02-01")}));
    auto move = fit(last<items::Item>(), "2026-05-01", "fork");
    EXPECT_EQ(book::proposedTold(book(), move), Told::AsItWas);
    move.item = addItem("new fork", "fork");
    EXPECT_EQ(book::proposedTold(book(), move), Told::Work);
    must(ride({.outing = outing("2026-05-10", 100)}));
    EXPECT_EQ(book::proposedTold(book(), move), Told::Unasked);
}

}  // namespace
}  // namespace wm::verbs
