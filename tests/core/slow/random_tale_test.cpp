// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Random garages hold what they are for, or the comparison with them would say little.
#include "tests/core/slow/random_tale.h"

#include <gtest/gtest.h>

#include <map>

#include "tests/core/slow/subject.h"

namespace wm::tale {
namespace {

/// How many answers of all garages are about something.
struct Seen {
    int empty = 0;
    int wholeForItsPart = 0;  ///< a part that was never tracked asks what it sits in
    int machine = 0;
    int moved = 0;  ///< counts from a record made on the other machine
    int nth = 0;
    int triggered = 0;
    int atOnce = 0;    ///< by something told of the very part of a day of the record that it counts from
    int putRight = 0;  ///< counts from a record that was told instead of another one
    int reached = 0;
    int bracket = 0;
    int anew = 0;  ///< follow-ups that a refit brought
    int waiting = 0;
};

void look(const Tale& tale, const std::string& machine, calendar::Date on, Seen& seen) {
    for (const std::string& task : randomTasks()) {
        const Answer answer = slowAnswer(tale, machine, task, on);
        seen.empty += answer.subject.starts_with("empty") ? 1 : 0;
        seen.machine += answer.subject.starts_with("machine") ? 1 : 0;
        seen.wholeForItsPart += task == "pin" && answer.subject.starts_with("item E") ? 1 : 0;
        seen.nth += answer.others > 1 ? 1 : 0;
        seen.triggered += answer.triggered != "no" ? 1 : 0;
        seen.reached += answer.reached != "no" ? 1 : 0;
        seen.bracket += answer.behind && answer.behind->high != answer.behind->low ? 1 : 0;
        const auto record = tale.ids.find(answer.countsFrom);
        if (record == tale.ids.end())
            continue;
        const auto& from = *tale.asTold.find<upkeep::Record>(RecordId{record->second});
        seen.moved += from.machine != tale.machine(machine) ? 1 : 0;
        seen.atOnce += answer.triggered == from.date.iso() && from.part == calendar::DayPart::AfterRiding;
        seen.putRight += from.entered != from.id.value() ? 1 : 0;
    }
    for (const Demand& demand : slowFollowUps(tale, machine, on)) {
        const auto* record = tale.ledger.find<upkeep::Record>(RecordId{tale.ids.at(demand.from)});
        seen.anew += record->date.iso() != demand.since ? 1 : 0;
        seen.waiting += demand.due ? 0 : 1;
    }
}

TEST(RandomTaleTest, HoldsWhatItIsFor) {
    Seen seen;
    for (std::uint64_t seed = 1; seed <= 120; ++seed) {
        const int days = 5 + static_cast<int>(seed % 40);
        const Tale tale = taleOf(randomTale(seed, days));
        const auto first = calendar::parseDate("", "2026-01-01").value();
        for (const int day : {days / 4, days / 2, 3 * days / 4, days})
            for (const std::string machine : {"Heron", "Kite"})
                look(tale, machine, first.plusDays(day), seen);
    }
    const std::map<std::string, int> counts{
        {"empty", seen.empty},     {"whole for its part", seen.wholeForItsPart},
        {"machine", seen.machine}, {"moved", seen.moved},
        {"n-th of", seen.nth},     {"triggered", seen.triggered},
        {"at once", seen.atOnce},  {"put right", seen.putRight},
        {"reached", seen.reached}, {"bracket", seen.bracket},
        {"anew", seen.anew},       {"waiting", seen.waiting}};
    for (const auto& [what, count] : counts)
        EXPECT_GE(count, 10) << what;
}

TEST(RandomTaleTest, IsTheSameForTheSameSeed) {
    EXPECT_EQ(randomTale(7, 20), randomTale(7, 20));
    EXPECT_NE(randomTale(7, 20), randomTale(8, 20));
}

// The day after the last one nothing more was ridden, done or moved.
TEST(RandomTaleTest, ADayOnWhichNothingHappensChangesNoCount) {
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
        const int days = 5 + static_cast<int>(seed % 20);
        const Tale tale = taleOf(randomTale(seed, days));
        const auto last = calendar::parseDate("", "2026-01-01").value().plusDays(days);
        for (const std::string machine : {"Heron", "Kite"})
            for (const std::string& task : randomTasks())
                EXPECT_TRUE(differences(slowAnswer(tale, machine, task, last),
                                        slowAnswer(tale, machine, task, last.plusDays(1)))
                                .empty())
                    << "garage " << seed << ", " << machine << ", " << task;
    }
}

}  // namespace
}  // namespace wm::tale
