// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// A change of many rows makes the picture that the same rows make a few at a time.
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/core/verbs/bench.h"

namespace wm::picture {

using namespace verbs;

namespace {

Change manyRows(const Ledger& before, MachineId machine) {
    Change change{"many", {}};
    for (int at = 0; at < 3'000; ++at)
        change.rows.emplace_back(usage::Outing{.id = OutingId{1'000'000 + (at * 7919) % 3'000},
                                               .entered = before.nextEntered() + at,
                                               .machine = machine,
                                               .date = day("2026-03-01").plusDays(at % 90),
                                               .hours = units::Hours{100 + at % 50}});
    items::Machine card = *before.find<items::Machine>(machine);
    for (const char* note : {"first word", "last word"}) {
        card.note = note;
        change.rows.emplace_back(card);
    }
    change.rows.emplace_back(items::Person{.id = PersonId{77}, .name = "Odile"});
    change.rows.emplace_back(Strike{
        .id = StrikeId{88}, .entered = before.nextEntered() + 3'000, .fact = 1'000'042, .reason = "twice"});
    return change;
}

TEST(ManyRowsTest, AtOnceOrAFewAtATimeIsTheSamePicture) {
    Bench bench;
    bench.today = day("2026-11-25");
    bench.must([&](const VerbContext& context) {
        return saveMachine(context, {.name = "Heron 250", .since = day("2026-01-10")});
    });
    const Ledger& before = bench.ledger();
    const MachineId heron = before.all<items::Machine>().front().id;
    const Change change = manyRows(before, heron);
    const Ledger atOnce = before.with(change);
    Ledger slowly = before;
    for (std::size_t at = 0; at < change.rows.size(); at += 100) {
        Change some{"some", {}};
        for (std::size_t row = at; row < std::min(at + 100, change.rows.size()); ++row)
            some.rows.push_back(change.rows[row]);
        slowly = slowly.with(some);
    }
    EXPECT_TRUE(atOnce.rows() == slowly.rows());
    EXPECT_EQ(atOnce.nextEntered(), slowly.nextEntered());
    EXPECT_EQ(atOnce.all<usage::Outing>().size(), 2'999U);
    EXPECT_EQ(atOnce.struck<usage::Outing>().size(), 1U);
    EXPECT_EQ(atOnce.find<items::Machine>(heron)->note, "last word");
    ASSERT_NE(atOnce.strikeOf(1'000'042), nullptr);
    EXPECT_EQ(atOnce.find<usage::Outing>(OutingId{1'000'041})->hours,
              slowly.find<usage::Outing>(OutingId{1'000'041})->hours);
}

}  // namespace
}  // namespace wm::picture
