// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/narrowing.h"
#include "core/verbs/baseline_verb.h"
#include "tests/core/verbs/bench.h"

namespace wm::book {

using namespace verbs;

namespace {

using upkeep::Consequence;

// A machine bought used: nothing of it was ever recorded.
class DueOrderTest : public testing::Test, public Bench {
  protected:
    MachineId old;

    void SetUp() override {
        must(saying(saveMachine, {.name = "Rook 300", .since = day("2026-01-10"), .startedNew = false}));
        old = last<items::Machine>();
        for (const Consequence each :
             {Consequence::SafetyEvident, Consequence::SafetyHidden, Consequence::EndsRace,
              Consequence::CostsMoney, Consequence::HiddenWear}) {
            const std::string name(base::Names<Consequence>::names.at(static_cast<std::size_t>(each)));
            must(saying(saveTask, {.machine = old,
                                   .validFrom = day("2026-01-10"),
                                   .code = "task-" + std::to_string(static_cast<int>(each)),
                                   .name = name,
                                   .consequence = each,
                                   .limits = {{.every = 1000}},
                                   .source = "common practice"}));
        }
    }
};

// What can hurt somebody stands first; at equal weight what the rider can't feel before what he can.
TEST_F(DueOrderTest, OfWhatNobodyRecordedSafetyComesFirst) {
    std::vector<std::string> names;
    const Book now = book();
    for (const DueLine& line : now.due(old)) {
        EXPECT_EQ(line.standing.kind, outlook::StandingKind::NoRecord);
        names.push_back(line.task->name);
    }
    EXPECT_EQ(names, (std::vector<std::string>{"safety hidden", "safety evident", "hidden wear",
                                               "ends a race", "costs money"}));
}

// A machine that ran up to 15 h, each job on a day that nobody remembers the hours of: 0 to 15 of 10 h.
TEST_F(DueOrderTest, WhatMayBeOverSortsWithTheOverdueIfSafetyHangsOnIt) {
    must([&](const VerbContext& context) {
        auto card = *context.book.ledger().find<items::Machine>(old);
        card.pastBest = units::Hours{1200};
        card.pastHigh = units::Hours{1500};
        return saveMachine(context, card);
    });
    std::vector<BaselineLine> lines;
    for (const auto& version : ledger().all<upkeep::TaskVersion>())
        lines.push_back(version.consequence == Consequence::EndsRace
                            ? BaselineLine{.task = version.task, .answer = BaselineAnswer::NeverDone}
                            : BaselineLine{.task = version.task,
                                           .answer = BaselineAnswer::Serviced,
                                           .date = day("2025-12-01")});
    must(saying(recordBaseline, old, lines, SinceThen{}));
    std::vector<std::string> names;
    const Book now = book();
    for (const DueLine& line : now.due(old)) {
        names.push_back(line.task->name);
        EXPECT_EQ(line.standing.kind, line.task->consequence == Consequence::EndsRace
                                          ? outlook::StandingKind::Overdue
                                          : outlook::StandingKind::MayBeOver)
            << line.task->name;
        EXPECT_EQ(narrowingOf(line).has_value(), line.task->consequence != Consequence::EndsRace);
    }
    EXPECT_EQ(names, (std::vector<std::string>{"safety evident", "safety hidden", "ends a race",
                                               "costs money", "hidden wear"}));
    EXPECT_EQ(narrowingOf(now.due(old).front())->by, NarrowedBy::MeterThen);
    EXPECT_EQ(narrowingOf(now.due(old).front())->since, day("2025-12-01"));
    EXPECT_EQ(now.chances(old).mayBeOver, 4);
    EXPECT_EQ(now.chances(old).dueNow, 1);
}

}  // namespace
}  // namespace wm::book
