// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Ledger::with must give what reading all rows anew would give, for each kind of change.
#include <gtest/gtest.h>

#include "core/picture/ledger.h"

namespace wm::picture {
namespace {

constexpr MachineId kMachine{7};

usage::Outing outing(std::int64_t id, base::Entered entered, std::int32_t day) {
    return {.id = OutingId{id}, .entered = entered, .machine = kMachine, .date = calendar::Date{day}};
}

Ledger start() {
    return Ledger({Garage{.name = "before"}, items::Machine{.id = kMachine, .name = "Heron"},
                   items::Person{.id = PersonId{50}, .name = "Odile"},
                   items::Person{.id = PersonId{90}, .name = "Jory"}, outing(1, 1, 100), outing(9, 2, 90)});
}

void expectSame(const Ledger& a, const Ledger& b) {
    EXPECT_EQ(a.rows(), b.rows());
    EXPECT_EQ(a.nextEntered(), b.nextEntered());
    EXPECT_EQ(a.struck<usage::Outing>(), b.struck<usage::Outing>());
    for (const auto& person : b.all<items::Person>())
        EXPECT_EQ(*a.find<items::Person>(person.id), person);
    for (const auto& ride : b.all<usage::Outing>())
        EXPECT_EQ(*a.find<usage::Outing>(ride.id), ride);
}

Ledger anew(const Ledger& ledger, const Change& change) {
    std::vector<Row> rows = ledger.rows();
    rows.insert(rows.end(), change.rows.begin(), change.rows.end());
    return Ledger(std::move(rows));
}

TEST(LedgerWithTest, AddsFactsAndCards) {
    const Change change{"x", {outing(4, 3, 80), items::Person{.id = PersonId{70}, .name = "Hanne"}}};
    const Ledger before = start();
    const Ledger after = before.with(change);
    expectSame(after, anew(before, change));
    EXPECT_EQ(after.all<items::Person>().size(), 3U);
    EXPECT_EQ(after.find<items::Person>(PersonId{90})->name, "Jory") << "moved on by the new card";
    EXPECT_EQ(before.all<usage::Outing>().size(), 2U) << "the picture before stays as it is";
    expectSame(start().with(change), after);
}

TEST(LedgerWithTest, OverwritesACard) {
    const Ledger after =
        start().with({"x", {Garage{.name = "after"}, items::Person{.id = PersonId{50}, .name = "Odile B."}}});
    EXPECT_EQ(after.garage().name, "after");
    EXPECT_EQ(after.all<items::Person>().size(), 2U);
    EXPECT_EQ(after.find<items::Person>(PersonId{50})->name, "Odile B.");
}

TEST(LedgerWithTest, StrikesAFactAndWritesTheRest) {
    const Change change{"x",
                        {Strike{.id = StrikeId{30}, .entered = 3, .fact = 9, .reason = "twice"},
                         outing(31, 4, 91), items::Person{.id = PersonId{50}, .name = "Odile B."}}};
    const Ledger after = start().with(change);
    ASSERT_EQ(after.struck<usage::Outing>().size(), 1U);
    EXPECT_EQ(after.struck<usage::Outing>().front().id, OutingId{9});
    EXPECT_EQ(after.strikeOf(9)->reason, "twice");
    EXPECT_EQ(after.all<usage::Outing>().size(), 2U);
    EXPECT_EQ(after.all<items::Person>().size(), 2U);
    EXPECT_EQ(after.find<items::Person>(PersonId{50})->name, "Odile B.");
    EXPECT_EQ(after.nextEntered(), 5);
}

}  // namespace
}  // namespace wm::picture
