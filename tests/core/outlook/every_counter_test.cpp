// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What has to hold of each counter there is, also of one that is added: said of the tables, not of names.
#include <gtest/gtest.h>

#include <type_traits>

#include "core/outlook/chances.h"
#include "core/upkeep/limits.h"
#include "core/upkeep/typed_interval.h"
#include "tests/core/made.h"

namespace wm::outlook {
namespace {

using made::day;
using made::evening;
using made::hours;
using made::km;
using made::Made;
using upkeep::Counter;
using upkeep::CounterKind;
using upkeep::CounterTraits;

// A muddy race with one of everything that is counted at an outing.
usage::Outing everything(usage::Outing outing) {
    usage::Outing::fields(outing, [&](std::string_view name, auto& value) {
        if constexpr (std::is_same_v<decltype(value), std::int64_t&>)
            value = name == "entered" ? value : 1;
    });
    outing.hours = hours("2");
    outing.distance = km("40");
    outing.ground = usage::Ground::Mud;
    return outing;
}

// Three weeks of it, washed with pressure, and crashed.
std::vector<usage::Atom> season() {
    Made make;
    usage::UseFacts facts;
    for (const char* date : {"2026-05-02", "2026-05-09", "2026-05-16"}) {
        facts.outings.push_back(everything(make.outing(date)));
        facts.washes.push_back(make.wash(date));
        facts.washes.back().pressure = true;
        facts.crashes.push_back(make.crash(date));
    }
    return atomsOf(facts);
}

std::vector<CounterTraits> movedByUse() {
    std::vector<CounterTraits> moved;
    for (const CounterTraits& counter : upkeep::kCounters)
        if (!upkeep::isCalendar(counter.of))
            moved.push_back(counter);
    return moved;
}

TEST(EveryCounterTest, IsMovedBySomeFactAndSummedUp) {
    const auto atoms = season();
    const auto first = usage::exposure(atoms, std::nullopt, evening("2026-05-08"));
    auto sum = first;
    sum += first;
    for (const CounterTraits& counter : movedByUse()) {
        const std::int64_t one = *bracketOf(first, counter.of).best;
        EXPECT_GT(one, 0) << counter.stored << ": nothing that can be entered adds to it";
        EXPECT_EQ(bracketOf(sum, counter.of).best, 2 * one) << counter.stored;
        EXPECT_EQ(bracketOf(usage::exposure(atoms, std::nullopt, evening("2026-05-16")), counter.of).best,
                  3 * one)
            << counter.stored;
        std::int64_t inAtoms = 0;
        for (const usage::Atom& atom : atoms)
            inAtoms += *bracketOf(atom, counter.of).best;
        EXPECT_EQ(inAtoms, 3 * one) << counter.stored << ": where it comes from does not add up to it";
    }
}

TEST(EveryCounterTest, IsLearnedAheadAndMakesTasksFallDue) {
    const Event race{.id = EventId{1},
                     .name = "race",
                     .kind = EventKind::Race,
                     .first = day("2026-05-24"),
                     .last = day("2026-05-24"),
                     .entries = {{.machine = MachineId{1}}}};
    const Ahead ahead = aheadOf(MachineId{1}, season(), std::vector{race}, day("2026-05-18"));
    const Odds odds(ahead);
    for (const CounterTraits& counter : movedByUse()) {
        EXPECT_GT(meanUse(ahead, counter.of, day("2026-05-24")), 0) << counter.stored;
        const DuePoint point{.needs = {{counter.of, 1}}};
        EXPECT_GT(odds.chanceBy(point, day("2026-05-24")), 0.5) << counter.stored;
        const Watched watched{.point = point};
        const auto clear = chancesOf(std::vector{watched}, odds, day("2026-05-24")).clear;
        ASSERT_TRUE(clear) << counter.stored;
        EXPECT_LT(*clear, 0.5) << counter.stored;
    }
}

TEST(EveryCounterTest, IsTypedAsItIsSaid) {
    for (const CounterTraits& counter : upkeep::kCounters)
        for (const std::int64_t amount : {1, 7}) {
            const std::int64_t stored = amount * upkeep::partsOfOne(counter.of);
            const auto typed = upkeep::parseInterval("figure", upkeep::countText(stored, counter.of));
            ASSERT_TRUE(typed) << counter.stored;
            EXPECT_EQ(typed->limits.front().counter, counter.of);
            EXPECT_EQ(typed->limits.front().every, stored);
            EXPECT_EQ(base::fromName<Counter>(counter.stored), counter.of);
        }
}

}  // namespace
}  // namespace wm::outlook
