// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/state.h"

#include "tests/core/slow/book_answer.h"
#include "tests/core/slow/places_then.h"
#include "tests/core/slow/random_tale.h"
#include "tests/core/verbs/bench.h"

namespace wm::book {

using namespace verbs;

namespace {

class StateTest : public testing::Test, public FurnishedBench {
  protected:
    ItemId add(const std::string& name, const std::string& position, std::optional<ItemId> parent = {}) {
        items::Move move{.date = day("2026-01-10"), .kind = items::MoveKind::Fitted, .position = position};
        move.machine = parent ? std::nullopt : std::optional(heron);
        move.parent = parent;
        must(saying(addItemFitted, {.name = name, .since = day("2026-01-10"), .startedNew = true}, move));
        return last<items::Item>();
    }
    void take(ItemId item, const char* date, items::MoveKind kind, const std::string& note = {}) {
        must(saying(moveItem, {.item = item, .date = day(date), .kind = kind, .note = note}));
    }
    std::vector<std::string> gaps() const {
        std::vector<std::string> words;
        const Book now = book();
        for (const Gap& gap : stateOf(now, heron).gaps)
            words.push_back(gap.position + (gap.isAway ? " away since " : " off since ") + gap.since.iso() +
                            (gap.where.empty() ? "" : " at " + gap.where) + (gap.isDoubtful ? "?" : ""));
        return words;
    }
    using Words = std::vector<std::string>;
};

TEST_F(StateTest, WhatNobodyEverTrackedIsThere) {
    EXPECT_TRUE(stateOf(book(), heron).isWhole());
}

TEST_F(StateTest, WhatWasTakenOffIsMissed) {
    add("piston A", "piston", engine);
    EXPECT_EQ(gaps(), Words{});
    take(engine, "2026-03-01", items::MoveKind::Removed);
    EXPECT_EQ(gaps(), Words{"engine off since 2026-03-01"}) << "and nothing below it";
    EXPECT_FALSE(stateOf(book(), heron).isWhole());
}

TEST_F(StateTest, APartOfWhatIsFittedIsMissedToo) {
    const ItemId piston = add("piston A", "piston", engine);
    take(piston, "2026-03-01", items::MoveKind::Retired);
    EXPECT_EQ(gaps(), Words{"engine/piston off since 2026-03-01"});
}

TEST_F(StateTest, WhatIsAtAWorkshopIsSaidWithItsPlace) {
    take(add("shock A", "shock"), "2026-03-02", items::MoveKind::Away, "Lowmoor");
    EXPECT_EQ(gaps(), Words{"shock away since 2026-03-02 at Lowmoor"});
}

TEST_F(StateTest, SomeThingsAreNotNeededAndOfSomeNobodyKnows) {
    take(add("guards", "Hand guards"), "2026-03-02", items::MoveKind::Removed);
    EXPECT_EQ(gaps(), Words{});
    take(add("thing", "widget"), "2026-03-02", items::MoveKind::Removed);
    EXPECT_EQ(gaps(), Words{"widget off since 2026-03-02?"});
    EXPECT_FALSE(stateOf(book(), heron).isWhole());
}

TEST_F(StateTest, NobodyRidesWithoutAnEngineUnasked) {
    take(engine, "2026-03-01", items::MoveKind::Removed);
    const usage::Outing outing{.machine = heron, .date = day("2026-03-02"), .hours = units::Hours{100}};
    EXPECT_EQ(refusedAt(saying(logOuting, {.outing = outing})), At(base::Fault::MustAnswer, "not_fitted"));
    must(saying(logOuting, {.outing = outing, .handTightSeen = true}));
    usage::Outing before = outing;
    before.date = day("2026-02-20");
    must(saying(logOuting, {.outing = before}));
}

// Against the slow look at every place of random garages, day by day.
TEST(StateOfRandomGaragesTest, MissesWhatTheSlowLookMisses) {
    int seen = 0;
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        const int days = 5 + static_cast<int>(seed % 40);
        const tale::Tale told = tale::taleOf(tale::randomTale(seed, days));
        const tale::PlacesThen places(told.ledger);
        const auto on = calendar::parseDate("", "2026-01-01").value().plusDays(days);
        const Book book(std::make_shared<const picture::Ledger>(told.ledger), on);
        for (const std::string name : {"Heron", "Kite"}) {
            const MachineId machine = told.machine(name);
            const auto isEmpty = [&](const std::string& path) {
                return places.holds(machine, path, {on, calendar::DayPart::AfterRiding}).isEmpty;
            };
            std::vector<std::string> right;
            for (const std::string path : {"engine", "rear wheel"})
                if (isEmpty(path))
                    right.push_back(path);
            if (!isEmpty("engine") && isEmpty("engine/piston"))
                right.push_back("engine/piston");
            std::vector<std::string> given;
            for (const Gap& gap : stateOf(book, machine).gaps)
                given.push_back(gap.position);
            std::sort(right.begin(), right.end());
            std::sort(given.begin(), given.end());
            EXPECT_EQ(given, right) << "garage " << seed << ", " << name;
            seen += static_cast<int>(right.size());
        }
    }
    EXPECT_GT(seen, 20);
}

}  // namespace
}  // namespace wm::book
