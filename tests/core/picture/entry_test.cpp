// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/picture/entry.h"

#include <algorithm>

#include "tests/core/verbs/bench.h"

namespace wm::picture {

using namespace verbs;

namespace {

// Ids in the given order, then the last one for ever.
base::IdSource source(std::vector<std::int64_t> ids) {
    return
        [ids = std::move(ids), at = std::size_t{0}]() mutable { return ids[std::min(at++, ids.size() - 1)]; };
}

class EntryTest : public testing::Test, public FurnishedBench {
  protected:
    std::int64_t idFrom(std::vector<std::int64_t> ids) {
        const base::IdSource newId = source(std::move(ids));
        Entry entry(ledger(), newId);
        return entry.newId<WashId>().value();
    }
};

TEST_F(EntryTest, TakesNoIdTwice) {
    EXPECT_EQ(idFrom({heron.value(), 0, -3, oilChange.value(), axle.value(), 42}), 42);
    EXPECT_EQ(idFrom({std::numeric_limits<std::int64_t>::max()}), std::numeric_limits<std::int64_t>::max());
    const base::IdSource stuck = source({7});
    Entry entry(ledger(), stuck);
    EXPECT_EQ(entry.newId<WashId>().value(), 7);
    EXPECT_EQ(entry.newId<WashId>().value(), 8);
}

TEST_F(EntryTest, NumbersWhatIsEntered) {
    const auto next = ledger().nextEntered();
    const auto change = say(ride({.outing = outing("2026-03-01", 100), .washed = true, .crashed = true}));
    ASSERT_TRUE(change);
    ASSERT_EQ(change->rows.size(), 3U);
    EXPECT_EQ(std::get<usage::Outing>(change->rows[0]).entered, next);
    EXPECT_EQ(std::get<usage::Wash>(change->rows[1]).entered, next + 1);
    EXPECT_EQ(std::get<usage::Crash>(change->rows[2]).entered, next + 2);
    EXPECT_EQ(ledger().nextEntered(), next + 3);
}

}  // namespace
}  // namespace wm::picture
