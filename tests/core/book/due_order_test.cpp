// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
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

}  // namespace
}  // namespace wm::book
