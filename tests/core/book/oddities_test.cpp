// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/oddities.h"

#include <gtest/gtest.h>

#include "tests/core/made.h"

namespace wm::book {
namespace {

using base::Error;
using base::Fault;
using made::day;
using made::evening;

constexpr MachineId kHeron{9001};
constexpr ItemId kFront{9011};
constexpr ItemId kTyre{9012};

class OdditiesTest : public testing::Test {
  protected:
    OdditiesTest() {
        rows.emplace_back(
            items::Machine{.id = kHeron, .name = "Heron", .since = day("2026-01-01"), .startedNew = true});
        add(kFront, "Wheel A", "front wheel");
        add(kTyre, "Tyre A", "");
    }
    void add(ItemId id, const char* name, const char* kind) {
        auto item = made::newItem(id, "2026-01-01");
        item.name = name;
        item.kind = kind;
        rows.emplace_back(item);
    }
    template <class Fact>
    void on(Fact fact) {
        fact.machine = kHeron;
        rows.emplace_back(fact);
    }
    [[nodiscard]] std::vector<Oddity> odd() const {
        return oddities({std::make_shared<const picture::Ledger>(rows), day("2026-06-01")});
    }

    made::Made make;
    std::vector<picture::Row> rows;
};

TEST_F(OdditiesTest, WhatIsRightIsNotNamed) {
    on(make.reading("2026-02-01", "10"));
    on(make.outing("2026-02-07", "2"));
    on(make.reading("2026-02-07", "12"));
    rows.emplace_back(make.fit(kFront, kHeron, "front wheel", evening("2026-01-01")));
    rows.emplace_back(make.fit(kTyre, kFront, "tyre", evening("2026-01-01")));
    EXPECT_TRUE(odd().empty());
}

TEST_F(OdditiesTest, AJumpAndALowerReadingAreNamed) {
    on(make.reading("2026-02-01", "10"));
    on(make.reading("2026-02-06", "6990"));
    on(make.reading("2026-02-07", "12"));
    const auto found = odd();
    ASSERT_EQ(found.size(), 2U);
    EXPECT_EQ(found[0].where, "Heron");
    EXPECT_EQ(found[0].day, day("2026-02-06"));
    EXPECT_EQ(found[0].error, (Error{Fault::MeterJumps, "shown", "6990.0", "10.0"}));
    EXPECT_EQ(found[1].day, day("2026-02-07"));
    EXPECT_EQ(found[1].error, (Error{Fault::MeterRunsBack, "shown", "12.0", "6990.0"}));
}

TEST_F(OdditiesTest, HoursWhileTheMeterStoodAreNamed) {
    on(make.reading("2026-02-01", "10"));
    on(make.outing("2026-02-07", "10"));
    on(make.reading("2026-02-07", "11.2"));
    ASSERT_EQ(odd().size(), 1U);
    EXPECT_EQ(odd()[0].error, (Error{Fault::MeterStood, "noted", "10.0 h", "1.2 h"}));
}

TEST_F(OdditiesTest, AnItemWhereItsKindDoesNotGoIsNamed) {
    rows.emplace_back(make.fit(kFront, kHeron, "rear wheel", evening("2026-01-01")));
    rows.emplace_back(make.fit(kTyre, kFront, "piston", evening("2026-01-02")));
    const auto found = odd();
    ASSERT_EQ(found.size(), 1U) << "of the other one nobody said what it is";
    EXPECT_EQ(found[0].where, "Heron, rear wheel");
    EXPECT_EQ(found[0].day, day("2026-01-01"));
    EXPECT_EQ(found[0].error, (Error{Fault::WrongKind, "item", "Wheel A", "front wheel"}));
}

}  // namespace
}  // namespace wm::book
