// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/verbs/bench.h"

namespace wm::verbs {
namespace {

using base::Fault;
using calendar::DayPart;
using items::MoveKind;

class ItemVerbsTest : public testing::Test, public FurnishedBench {
  protected:
    items::Machine machine{.name = "Otter 125", .since = day("2026-02-01")};
    items::Item spare{.name = "mud wheel", .since = day("2026-02-01")};

    At saveMachineWith(void (*spoil)(items::Machine&)) {
        items::Machine other = machine;
        spoil(other);
        return refusedAt(saying(saveMachine, other));
    }
    At saveItemWith(void (*spoil)(items::Item&)) {
        items::Item other = spare;
        spoil(other);
        return refusedAt(saying(saveItem, other));
    }
    ItemId addSpare() {
        must(saying(saveItem, spare));
        return last<items::Item>();
    }
    [[nodiscard]] items::Move fitWheel(ItemId item, const char* on) const {
        return {.item = item, .date = day(on), .machine = heron, .position = "rear wheel"};
    }
};

TEST_F(ItemVerbsTest, NamesTheFile) {
    EXPECT_EQ(must(saying(nameGarage, " The shed ", day("2026-05-16"))), "named the file The shed");
    EXPECT_EQ(ledger().garage().name, "The shed");
    EXPECT_EQ(ledger().garage().pinnedToday, day("2026-05-16"));
    EXPECT_EQ(refusedAt(saying(nameGarage, "The shed", day("2026-05-16"))), At(Fault::NothingToDo, "name"));
    EXPECT_EQ(refusedAt(saying(nameGarage, " ", std::nullopt)), At(Fault::Empty, "name"));
    EXPECT_EQ(refusedAt(saying(nameGarage, "x", calendar::Date{1'000'000})),
              At(Fault::NotADate, "pinned_today"));
}

TEST_F(ItemVerbsTest, KeepsOnePersonAName) {
    EXPECT_EQ(must(saying(savePerson, items::Person{.name = " Jori "})), "added Jori");
    const PersonId jori = last<items::Person>();
    EXPECT_EQ(must(saying(savePerson, items::Person{.id = jori, .name = "jori"})), "changed jori");
    EXPECT_EQ(ledger().all<items::Person>().size(), 2U);
    EXPECT_EQ(refusedAt(saying(savePerson, items::Person{.name = "MARA"})), At(Fault::Duplicate, "name"));
    EXPECT_EQ(refusedAt(saying(savePerson, items::Person{.id = jori, .name = "Mara"})),
              At(Fault::Duplicate, "name"));
    EXPECT_EQ(refusedAt(saying(savePerson, items::Person{.id = PersonId{5}, .name = "Ib"})),
              At(Fault::Unknown, "id"));
    EXPECT_EQ(refusedAt(saying(savePerson, items::Person{.id = jori, .name = "jori"})),
              At(Fault::NothingToDo, "id"));
    for (const char* bad : {"\xc3\x28", "\xed\xa0\x80", "a\nb", "a\x01"})
        EXPECT_EQ(refusedAt(saying(savePerson, items::Person{.name = bad})), At(Fault::NotText, "name"));
    EXPECT_EQ(refusedAt(saying(savePerson, items::Person{.name = std::string(201, 'x')})),
              At(Fault::TooLong, "name"));
}

TEST_F(ItemVerbsTest, TakesMarkupAndQuotesLiterally) {
    for (const char* name :
         {"<b>Heron</b> & 'co'", "\"; DROP TABLE machine; --", "=1+1", "../etc", "Ærø 125"}) {
        machine.name = name;
        EXPECT_EQ(must(saying(saveMachine, machine)), "added " + std::string(name));
        EXPECT_EQ(ledger().all<items::Machine>().back().name, name);
    }
}

TEST_F(ItemVerbsTest, SavesAMachine) {
    machine.pastLow = units::Hours{4100};
    machine.pastBest = units::Hours{6000};
    EXPECT_EQ(must(saying(saveMachine, machine)), "added Otter 125");
    machine.id = last<items::Machine>();
    machine.goneOn = day("2026-09-01");
    EXPECT_EQ(must(saying(saveMachine, machine)), "changed Otter 125");
    EXPECT_EQ(*ledger().find<items::Machine>(machine.id), machine);
    machine.id = MachineId{3};
    EXPECT_EQ(refusedAt(saying(saveMachine, machine)), At(Fault::Unknown, "id"));
}

TEST_F(ItemVerbsTest, AMachineThatStartedNewHasNoPast) {
    machine.startedNew = true;
    machine.pastBest = units::Hours{500};
    must(saying(saveMachine, machine));
    EXPECT_EQ(ledger().all<items::Machine>().back().pastBest, units::Hours{0});
    EXPECT_EQ(ledger().all<items::Machine>().back().pastHigh, units::Hours{0});
}

TEST_F(ItemVerbsTest, RefusesAMachineThatCannotBe) {
    using M = items::Machine;
    EXPECT_EQ(saveMachineWith([](M& m) { m.name = "heron 250"; }), At(Fault::Duplicate, "name"));
    EXPECT_EQ(saveMachineWith([](M& m) { m.name = ""; }), At(Fault::Empty, "name"));
    EXPECT_EQ(saveMachineWith([](M& m) { m.model = "\x80"; }), At(Fault::NotText, "model"));
    EXPECT_EQ(saveMachineWith([](M& m) { m.note = std::string(20'001, 'x'); }), At(Fault::TooLong, "note"));
    EXPECT_EQ(saveMachineWith([](M& m) { m.year = 25; }), At(Fault::Implausible, "year"));
    EXPECT_EQ(saveMachineWith([](M& m) { m.year = 20255; }), At(Fault::TooLarge, "year"));
    EXPECT_EQ(saveMachineWith([](M& m) { m.since = day("2026-05-21"); }), At(Fault::InFuture, "since"));
    EXPECT_EQ(saveMachineWith([](M& m) { m.since = calendar::Date{-30'000}; }), At(Fault::NotADate, "since"));
    EXPECT_EQ(saveMachineWith([](M& m) { m.goneOn = day("2026-01-31"); }), At(Fault::OutOfOrder, "gone_on"));
    EXPECT_EQ(saveMachineWith([](M& m) { m.pastLow = units::Hours{-1}; }), At(Fault::Negative, "past_low"));
    EXPECT_EQ(saveMachineWith([](M& m) { m.pastBest = units::Hours{10'000'001}; }),
              At(Fault::TooLarge, "past_best"));
    EXPECT_EQ(saveMachineWith([](M& m) { m.pastLow = units::Hours{2}; }), At(Fault::OutOfOrder, "past_best"));
    EXPECT_EQ(saveMachineWith([](M& m) {
                  m.pastBest = units::Hours{2};
                  m.pastHigh = units::Hours{1};
              }),
              At(Fault::OutOfOrder, "past_high"));
}

TEST_F(ItemVerbsTest, AMachineCannotBeYoungerThanItsFacts) {
    must(ride({.outing = outing("2026-03-01", 100)}));
    items::Machine card = *ledger().find<items::Machine>(heron);
    card.since = day("2026-01-09");
    must(saying(saveMachine, card));
    card.since = day("2026-01-11");
    const auto error = refused(saying(saveMachine, card));
    EXPECT_EQ(error.fault, Fault::OutOfOrder);
    EXPECT_EQ(error.wanted, "2026-01-10");  // the fitting of the engine
    items::Item wheelCard = *ledger().find<items::Item>(wheel);
    wheelCard.since = day("2026-01-11");
    EXPECT_EQ(refusedAt(saying(saveItem, wheelCard)), At(Fault::OutOfOrder, "since"));
}

TEST_F(ItemVerbsTest, SavesAnItem) {
    EXPECT_EQ(must(saying(saveItem, spare)), "added mud wheel");
    spare.id = last<items::Item>();
    spare.kind = "wheel";
    EXPECT_EQ(must(saying(saveItem, spare)), "changed mud wheel");
    EXPECT_EQ(*ledger().find<items::Item>(spare.id), spare);
    using I = items::Item;
    EXPECT_EQ(saveItemWith([](I& i) { i.name = "  "; }), At(Fault::Empty, "name"));
    EXPECT_EQ(saveItemWith([](I& i) { i.kind = "\xff"; }), At(Fault::NotText, "kind"));
    EXPECT_EQ(saveItemWith([](I& i) { i.partNumber = std::string(201, '9'); }),
              At(Fault::TooLong, "part_number"));
    EXPECT_EQ(saveItemWith([](I& i) { i.since = day("2027-01-01"); }), At(Fault::InFuture, "since"));
    EXPECT_EQ(saveItemWith([](I& i) { i.pastLow = units::Hours{5}; }), At(Fault::OutOfOrder, "past_best"));
    spare.id = ItemId{9};
    EXPECT_EQ(refusedAt(saying(saveItem, spare)), At(Fault::Unknown, "id"));
}

TEST_F(ItemVerbsTest, AddsAnItemWhereItSits) {
    const items::Move move{.date = day("2026-03-01"), .parent = engine, .position = "piston"};
    EXPECT_EQ(must(saying(addItemFitted, items::Item{.name = "piston 1", .since = day("2026-03-01")}, move)),
              "fitted piston 1 to engine A");
    EXPECT_EQ(book().fittings().at(heron, "engine/piston", {day("2026-03-02")}), last<items::Item>());
    const auto again = [&](const char* since, items::Move where) {
        return refusedAt(saying(addItemFitted, items::Item{.name = "piston 2", .since = day(since)}, where));
    };
    EXPECT_EQ(again("2026-03-01", move).fault, Fault::PositionTaken);
    EXPECT_EQ(again("2026-03-02", move), At(Fault::BeforeItsTime, "date"));
    EXPECT_EQ(again("2026-03-01", {.date = day("2026-03-01")}), At(Fault::Empty, "machine"));
    EXPECT_EQ(ledger().all<items::Item>().size(), 3U);
}

TEST_F(ItemVerbsTest, MovesAnItemAbout) {
    const ItemId mud = addSpare();
    EXPECT_EQ(must(saying(moveItem, items::Move{.item = wheel,
                                                .date = day("2026-03-01"),
                                                .kind = MoveKind::Removed,
                                                .position = "left over"})),
              "put rear wheel on the shelf");
    EXPECT_EQ(ledger().all<items::Move>().back().position, "");
    EXPECT_EQ(must(saying(moveItem, fitWheel(mud, "2026-03-01"))), "fitted mud wheel to Heron 250");
    EXPECT_EQ(
        must(saying(moveItem, items::Move{.item = wheel, .date = day("2026-03-02"), .kind = MoveKind::Away})),
        "sent rear wheel away");
    EXPECT_EQ(must(saying(moveItem,
                          items::Move{.item = wheel, .date = day("2026-03-09"), .kind = MoveKind::Retired})),
              "retired rear wheel");
    EXPECT_EQ(refused(saying(moveItem, fitWheel(wheel, "2026-04-01"))).fault, Fault::Retired);
}

TEST_F(ItemVerbsTest, RefusesAMoveThatCannotBe) {
    const ItemId mud = addSpare();
    const auto fault = [&](items::Move move) { return refused(saying(moveItem, move)).fault; };
    EXPECT_EQ(fault(fitWheel(ItemId{4}, "2026-03-01")), Fault::Unknown);
    EXPECT_EQ(fault(fitWheel(mud, "2026-01-31")), Fault::BeforeItsTime);
    EXPECT_EQ(fault(fitWheel(mud, "2026-05-21")), Fault::InFuture);
    EXPECT_EQ(fault(fitWheel(mud, "2026-03-01")), Fault::PositionTaken);
    auto move = fitWheel(mud, "2026-03-01");
    move.machine = MachineId{4};
    EXPECT_EQ(fault(move), Fault::Unknown);
    move = fitWheel(mud, "2026-03-01");
    move.position = "wheel/rear";
    EXPECT_EQ(fault(move), Fault::Malformed);
    move.position = "";
    EXPECT_EQ(fault(move), Fault::Empty);
    move.position = "spare";
    move.parent = engine;
    EXPECT_EQ(fault(move), Fault::Inconsistent);
    move.machine.reset();
    move.parent = mud;
    EXPECT_EQ(fault(move), Fault::Cycle);
    move = fitWheel(wheel, "2026-03-01");
    move.position = "front wheel";
    EXPECT_EQ(fault(move), Fault::InTwoPlaces);
    EXPECT_EQ(fault({.item = mud, .date = day("2026-03-01"), .kind = MoveKind::Removed}), Fault::NotFitted);
}

TEST_F(ItemVerbsTest, SwapsTwoItemsInOneGo) {
    const ItemId mud = addSpare();
    auto move = fitWheel(mud, "2026-03-01");
    move.part = DayPart::BeforeRiding;
    EXPECT_EQ(must(saying(swapItem, move, MoveKind::Away)), "fitted mud wheel to Heron 250");
    const auto fittings = book();
    EXPECT_EQ(fittings.fittings().at(heron, "rear wheel", {day("2026-03-01"), DayPart::Riding}), mud);
    EXPECT_EQ(fittings.fittings().placeOf(wheel, {day("2026-03-01")})->kind, MoveKind::Away);
    move.date = day("2026-04-01");
    EXPECT_EQ(refusedAt(saying(swapItem, move, MoveKind::Removed)), At(Fault::NothingToDo, "item"));
    move.item = wheel;
    EXPECT_EQ(refusedAt(saying(swapItem, move, MoveKind::Fitted)), At(Fault::Inconsistent, "old"));
    move.position = "front wheel";
    EXPECT_EQ(refusedAt(saying(swapItem, move, MoveKind::Removed)), At(Fault::NotFitted, "position"));
    move.item = engine;
    move.position = "rear wheel";
    EXPECT_EQ(refused(saying(swapItem, move, MoveKind::Removed)).fault, Fault::InTwoPlaces);
}

TEST_F(ItemVerbsTest, NotesASetting) {
    const items::Setting setting{
        .machine = heron, .date = day("2026-03-01"), .name = "fork clicks", .value = "12 out"};
    EXPECT_EQ(must(saying(noteSetting, setting)), "noted fork clicks 12 out on Heron 250");
    const auto at = [&](auto&& spoil) {
        items::Setting other = setting;
        spoil(other);
        return refusedAt(saying(noteSetting, other));
    };
    EXPECT_EQ(at([](auto& s) { s.machine = MachineId{2}; }), At(Fault::Unknown, "machine"));
    EXPECT_EQ(at([](auto& s) { s.item = ItemId{2}; }), At(Fault::Unknown, "item"));
    EXPECT_EQ(at([](auto& s) { s.date = day("2026-01-09"); }), At(Fault::BeforeItsTime, "date"));
    EXPECT_EQ(at([](auto& s) { s.name = ""; }), At(Fault::Empty, "name"));
    EXPECT_EQ(at([](auto& s) { s.value = "\n"; }), At(Fault::Empty, "value"));
}

TEST_F(ItemVerbsTest, AMachineThatHasGoneTakesNoMoreFacts) {
    items::Machine card = *ledger().find<items::Machine>(heron);
    card.goneOn = day("2026-04-01");
    must(saying(saveMachine, card));
    must(saying(logWash, usage::Wash{.machine = heron, .date = day("2026-04-01")}));
    EXPECT_EQ(refusedAt(saying(logWash, usage::Wash{.machine = heron, .date = day("2026-04-02")})),
              At(Fault::Retired, "machine"));
}

}  // namespace
}  // namespace wm::verbs
