// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/expiry.h"

#include "tests/core/verbs/bench.h"

namespace wm::book {

using namespace verbs;

namespace {

// A wheel whose bearings are renewed every 20 h, on the shelf since 1 March with 17 h behind it; the Heron
// rides 2 h a week and has a race on 23 May.
class ExpiryTest : public testing::Test, public FurnishedBench {
  protected:
    ExpiryTest() {
        must(saying(addItemFitted,
                    items::Item{.name = "spare wheel", .since = day("2026-01-10"), .startedNew = true},
                    items::Move{.date = day("2026-01-10"), .machine = heron, .position = "spare"}));
        spare = last<items::Item>();
        must(ride({.outing = outing("2026-02-01", 1700)}));
        must(saying(moveItem,
                    items::Move{.item = spare, .date = day("2026-03-01"), .kind = items::MoveKind::Removed}));
        must(saying(moveItem,
                    items::Move{.item = wheel, .date = day("2026-03-01"), .kind = items::MoveKind::Removed}));
        saveWheelBearings();
        for (const char* date : {"2026-04-05", "2026-04-12", "2026-04-19", "2026-04-26", "2026-05-03",
                                 "2026-05-10", "2026-05-17"})
            must(ride({.outing = outing(date, 200), .handTightSeen = true}));
        must([&](const VerbContext& context) {
            return saveEvent(context, {.name = "Birch Hollow",
                                       .first = day("2026-05-23"),
                                       .last = day("2026-05-24"),
                                       .entries = {{heron, std::nullopt}}});
        });
    }
    // As the book would be with the spare wheel fitted today.
    std::vector<Expiry> ifFitted() {
        must(saying(moveItem, items::Move{.item = spare,
                                          .date = today,
                                          .kind = items::MoveKind::Fitted,
                                          .machine = heron,
                                          .position = "rear wheel"}));
        return expiriesOf(book(), spare);
    }
    ItemId spare;
};

// 17 of 20 h: 3 h are left, the two days of the race take some 4.
TEST_F(ExpiryTest, ALifeThatEndsBeforeTheEventIsOverIsNamed) {
    EXPECT_TRUE(expiriesOf(book(), spare).empty()) << "nothing ends on the shelf";
    const auto found = ifFitted();
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].item, "spare wheel");
    EXPECT_EQ(found[0].task, "New wheel bearings");
    EXPECT_FALSE(found[0].isOver);
    ASSERT_TRUE(found[0].event);
    EXPECT_EQ(found[0].event->name, "Birch Hollow");
    ASSERT_TRUE(found[0].likely);
    EXPECT_LE(*found[0].likely, day("2026-05-24"));
}

TEST_F(ExpiryTest, ALifeThatIsOverIsSo) {
    auto bearings = ledger().all<upkeep::TaskVersion>().back();
    bearings.limits = {{.every = 1700}};
    bearings.validFrom = today;
    must(saying(saveTask, bearings));
    const auto found = ifFitted();
    ASSERT_EQ(found.size(), 1U);
    EXPECT_TRUE(found[0].isOver);
}

TEST_F(ExpiryTest, AChecksIntervalIsNoLife) {
    auto check = ledger().all<upkeep::TaskVersion>().back();
    check.renews = false;
    check.validFrom = today;
    must(saying(saveTask, check));
    EXPECT_TRUE(ifFitted().empty());
    // A hard limit is one.
    check = ledger().all<upkeep::TaskVersion>().back();
    check.limits[0].hard = true;
    must(saying(saveTask, check));
    EXPECT_EQ(expiriesOf(book(), spare).size(), 1U);
}

TEST_F(ExpiryTest, ALifeThatLastsIsNotNamed) {
    auto bearings = ledger().all<upkeep::TaskVersion>().back();
    bearings.limits = {{.every = 4000}};
    bearings.validFrom = today;
    must(saying(saveTask, bearings));
    EXPECT_TRUE(ifFitted().empty());
}

}  // namespace
}  // namespace wm::book
