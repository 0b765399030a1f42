// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/together.h"

#include "tests/core/verbs/bench.h"

namespace wm::verbs {
namespace {

class TogetherTest : public testing::Test, public FurnishedBench {
  protected:
    std::vector<std::size_t> seen;  ///< washes in the book that each verb was checked on

    Verb wash(const char* on) {
        return [this, wash = usage::Wash{.machine = heron, .date = day(on)}](const VerbContext& context) {
            seen.push_back(context.book.ledger().all<usage::Wash>().size());
            return logWash(context, wash);
        };
    }
};

TEST_F(TogetherTest, EachIsCheckedOnWhatThoseBeforeLeaveBehind) {
    EXPECT_EQ(must(together("a weekend's washes", {wash("2026-05-16"), wash("2026-05-17")})),
              "a weekend's washes");
    EXPECT_EQ(seen, (std::vector<std::size_t>{0, 1}));
    const auto& washes = ledger().all<usage::Wash>();
    ASSERT_EQ(washes.size(), 2U);
    EXPECT_NE(washes[0].id, washes[1].id);
    EXPECT_LT(washes[0].entered, washes[1].entered);
}

TEST_F(TogetherTest, AllAreWrittenOrNone) {
    EXPECT_EQ(refusedAt(together("a weekend's washes", {wash("2026-05-16"), wash("2026-05-21")})),
              At(base::Fault::InFuture, "date"));
    EXPECT_TRUE(ledger().all<usage::Wash>().empty());
}

}  // namespace
}  // namespace wm::verbs
