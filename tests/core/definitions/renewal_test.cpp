// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/definitions/renewal.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <random>

#include "core/calendar/in_force.h"
#include "tests/core/exchange/shipped.h"
#include "tests/core/verbs/bench.h"

namespace wm::definitions {
namespace {

using upkeep::Deed;
using verbs::Bench;
using verbs::day;
using verbs::saying;
using Names = std::vector<std::string>;

Schedule scheduleOf(const exchange::Starter& starter) {
    return {starter.steps, starter.joints, starter.tasks};
}

class RenewalTest : public testing::Test, public Bench {
  protected:
    RenewalTest() {
        must(saying(verbs::saveMachine, items::Machine{.name = "Heron 250", .since = day("2026-01-10")}));
        heron = last<items::Machine>();
    }
    void adopt(const Schedule& starter) {
        must(saying(verbs::adoptSchedule, heron, "as it was", starter.steps, starter.joints, starter.tasks));
    }
    base::Result<picture::Change> take(const Schedule& starter, RenewalGroup group) {
        return say([&](const verbs::VerbContext& context) {
            return verbs::renewSchedule(context, heron, starter, group);
        });
    }
    void takeAll(const Schedule& starter) {
        for (const RenewalGroup group : {RenewalGroup::Order, RenewalGroup::NewTasks, RenewalGroup::Intervals,
                                         RenewalGroup::Words, RenewalGroup::Order})
            if (const auto taken = take(starter, group); !taken) {
                EXPECT_EQ(taken.error().fault, base::Fault::NothingToDo) << taken.error().field;
            }
    }
    // "intervals oil: limits" or "new tasks fork-oil"
    Names said(const Schedule& starter) {
        static const std::map<RenewalGroup, std::string> kWords{{RenewalGroup::Order, "order"},
                                                                {RenewalGroup::NewTasks, "new"},
                                                                {RenewalGroup::Intervals, "intervals"},
                                                                {RenewalGroup::Words, "words"}};
        Names lines;
        for (const Difference& each : differences(book(), heron, starter)) {
            std::string line = kWords.at(each.group) + " " + each.code;
            for (const std::string& field : each.fields)
                line += " " + field;
            for (const std::string& field : each.kept)
                line += " not " + field;
            lines.push_back(line);
        }
        return lines;
    }
    upkeep::TaskVersion task(const std::string& code) {
        std::optional<upkeep::TaskVersion> stands;
        for (const auto& each : ledger().all<upkeep::TaskVersion>())
            if (each.machine == heron && each.code == code &&
                (!stands || calendar::supersedes(each, *stands)))
                stands = each;
        EXPECT_TRUE(stands) << "no task " << code;
        return stands.value_or(upkeep::TaskVersion{});
    }

    MachineId heron;
    Schedule older{{{.code = "seat", .name = "Seat off", .off = units::Minutes{2}}},
                   {{.code = "seat-bolts", .name = "Seat bolts"}},
                   {{.code = "oil",
                     .name = "Oil",
                     .limits = {{.every = 1000}},
                     .kit = {{.what = "oil", .amount = 900, .unit = upkeep::Unit::Millilitre}},
                     .howTo = "Drain it",
                     .source = "common practice"},
                    {.code = "air", .name = "Air filter", .source = "common practice"}}};
    Schedule newer = older;
};

TEST_F(RenewalTest, NothingDiffersFromWhatWasJustAdopted) {
    for (const char* name : test::kShippedStarters) {
        must(saying(verbs::saveMachine, items::Machine{.name = name, .since = day("2026-01-10")}));
        heron = last<items::Machine>();
        const Schedule starter = scheduleOf(test::shippedStarter(name));
        adopt(starter);
        EXPECT_EQ(said(starter), Names{}) << name;
    }
}

TEST_F(RenewalTest, SaysWhatIsOtherInItsGroup) {
    adopt(older);
    newer.steps[0].off = units::Minutes{3};
    newer.joints[0].held = "by hand";
    newer.tasks[0].limits[0].every = 800;
    newer.tasks[0].howTo = "Drain it warm";
    newer.tasks.push_back({.code = "fork", .name = "Fork"});
    EXPECT_EQ(said(newer), (Names{"order seat off_minutes", "order seat-bolts held", "new fork",
                                  "intervals oil limits", "words oil how_to"}));
    must([&](const verbs::VerbContext& context) {
        return verbs::renewSchedule(context, heron, newer, RenewalGroup::Words);
    });
    EXPECT_EQ(task("oil").howTo, "Drain it warm");
    EXPECT_EQ(task("oil").limits[0].every, 1000) << "another group";
    EXPECT_EQ(task("oil").validFrom, today);
    takeAll(newer);
    EXPECT_EQ(said(newer), Names{});
    EXPECT_EQ(task("oil").limits[0].every, 800);
    EXPECT_FALSE(take(newer, RenewalGroup::Order)) << "there is nothing left";
}

TEST_F(RenewalTest, WhatTheMechanicChangedStays) {
    adopt(older);
    auto own = task("oil");
    own.limits[0].every = 600;
    must(saying(verbs::saveTask, own));
    newer.tasks[0].limits[0].every = 800;
    newer.tasks[0].combine = upkeep::Combine::Last;
    newer.tasks[0].howTo = "Drain it warm";
    EXPECT_EQ(said(newer), (Names{"intervals oil combine not limits", "words oil how_to"}));
    takeAll(newer);
    EXPECT_EQ(task("oil").limits[0].every, 600);
    EXPECT_EQ(task("oil").combine, upkeep::Combine::Last);
    EXPECT_EQ(task("oil").howTo, "Drain it warm");
    EXPECT_EQ(said(newer), Names{});
}

// The next starter is compared with the one before it, not with the first.
TEST_F(RenewalTest, WhatWasTakenOverIsNotTakenForAChangeOfOnesOwn) {
    adopt(older);
    auto own = task("oil");
    own.limits[0].every = 600;
    must(saying(verbs::saveTask, own));
    newer.tasks[0].howTo = "Drain it warm";
    takeAll(newer);
    newer.tasks[0].howTo = "Drain it warm, outside";
    newer.tasks[0].limits[0].every = 700;
    EXPECT_EQ(said(newer), (Names{"words oil how_to"})) << "the limit is the mechanic's";
    takeAll(newer);
    EXPECT_EQ(task("oil").howTo, "Drain it warm, outside");
    EXPECT_EQ(task("oil").limits[0].every, 600);
}

TEST_F(RenewalTest, AnIntervalOfTheManualStays) {
    adopt(older);
    auto own = task("oil");
    own.source = "service manual";
    own.confirmed = true;
    must(saying(verbs::saveTask, own));
    newer.tasks[0].limits[0].every = 800;
    EXPECT_EQ(said(newer), Names{});
}

TEST_F(RenewalTest, ALineTiedToTheShelfStaysAndANewOneComes) {
    must(saying(verbs::saveStockLine,
                stock::StockLine{.name = "Oil 10W-40", .unit = upkeep::Unit::Millilitre}));
    adopt(older);
    auto own = task("oil");
    own.kit[0].line = last<stock::StockLine>();
    must(saying(verbs::saveTask, own));
    newer.tasks[0].kit.push_back({.what = "drain washer"});
    newer.tasks[0].kit[0].amount = 1000;
    takeAll(newer);
    const auto kit = task("oil").kit;
    ASSERT_EQ(kit.size(), 2U);
    EXPECT_TRUE(kit[0].line.has_value());
    EXPECT_EQ(kit[0].amount, 900);
    EXPECT_EQ(kit[1].what, "drain washer");
}

// Else common practice would stand in it under the mark of the manual.
TEST_F(RenewalTest, TheOrderOfAStepThatWasConfirmedStays) {
    adopt(older);
    auto seat = ledger().all<weekend::StepVersion>().back();
    ASSERT_EQ(seat.code, "seat");
    seat.confirmed = true;
    seat.source = "service manual";
    must(saying(verbs::saveStep, seat));
    newer.steps[0].off = units::Minutes{9};
    newer.steps[0].doings = {{.code = "wipe", .what = "Wipe it"}};
    newer.steps[0].refit = "Tongue under the tank";
    EXPECT_EQ(said(newer), Names{"words seat refit"});
    takeAll(newer);
    const auto now = ledger().all<weekend::StepVersion>().back();
    EXPECT_EQ(now.off, older.steps[0].off);
    EXPECT_TRUE(now.doings.empty());
    EXPECT_EQ(now.refit, "Tongue under the tank");
}

// The tie is no change of the starter's, and a new amount does not undo it.
TEST_F(RenewalTest, WhatWasTiedToTheShelfFromTheBeginningStaysTied) {
    must(saying(verbs::saveStockLine,
                stock::StockLine{.name = "Engine oil", .unit = upkeep::Unit::Millilitre}));
    Schedule withTie = older;
    withTie.tasks[0].kit[0].line = last<stock::StockLine>();
    adopt(withTie);
    EXPECT_EQ(said(older), Names{});
    newer.tasks[0].kit[0].amount = 1000;
    EXPECT_EQ(said(newer), Names{"words oil kit"});
    takeAll(newer);
    EXPECT_EQ(task("oil").kit[0].amount, 1000);
    EXPECT_EQ(task("oil").kit[0].line, withTie.tasks[0].kit[0].line);
    EXPECT_EQ(said(newer), Names{});
}

TEST_F(RenewalTest, WhatWasPutAwayAndWhatIsOnesOwnIsLeftAlone) {
    adopt(older);
    auto away = task("air");
    away.active = false;
    must(saying(verbs::saveTask, away));
    must(saying(verbs::saveTask, upkeep::TaskVersion{.machine = heron, .code = "fork", .name = "My fork"}));
    newer.tasks[1].howTo = "Swap it";
    newer.tasks.push_back({.code = "fork", .name = "Fork oil"});
    EXPECT_EQ(said(newer), Names{});
}

TEST_F(RenewalTest, WhatNamesANewTaskWaitsForIt) {
    adopt(older);
    newer.tasks.push_back({.code = "fork", .name = "Fork"});
    newer.tasks[0].edges = {{{Deed::Job, "oil"}, {Deed::Job, "fork"}},
                            {{Deed::Job, "air"}, {Deed::Job, "oil"}}};
    newer.tasks[0].triggers = {{upkeep::Happening::Job, "fork"}};
    EXPECT_EQ(said(newer), (Names{"order oil edges", "new fork"}));
    ASSERT_TRUE(take(newer, RenewalGroup::Order));
    EXPECT_EQ(task("oil").edges.size(), 1U);
    EXPECT_EQ(said(newer), (Names{"new fork"}));
    ASSERT_TRUE(take(newer, RenewalGroup::NewTasks));
    EXPECT_EQ(said(newer), (Names{"order oil edges", "intervals oil triggers"}));
    takeAll(newer);
    EXPECT_EQ(task("oil").edges.size(), 2U);
}

TEST_F(RenewalTest, ACycleWithOnesOwnEdgeIsRefusedAndNothingIsTaken) {
    adopt(older);
    auto own = task("oil");
    own.edges = {{{Deed::Job, "oil"}, {Deed::Job, "air"}}};
    must(saying(verbs::saveTask, own));
    newer.tasks[1].edges = {{{Deed::Job, "air"}, {Deed::Job, "oil"}}};
    const auto before = ledger().all<upkeep::TaskVersion>().size();
    const auto taken = take(newer, RenewalGroup::Order);
    ASSERT_FALSE(taken);
    EXPECT_EQ(taken.error().fault, base::Fault::Cycle);
    EXPECT_EQ(ledger().all<upkeep::TaskVersion>().size(), before);
}

// Any older starter, and any changes of one's own, which are told by a word that no starter has: afterwards
// all is as the starter has it, but for those.
TEST_F(RenewalTest, AfterAllGroupsItStandsAsTheStarterSaysButForOnesOwn) {
    const Schedule starter = scheduleOf(test::shippedStarter("two-stroke-motocross.json"));
    std::mt19937 random(14);
    const auto one = [&](std::size_t of) {
        return std::uniform_int_distribution<std::size_t>(0, of - 1)(random);
    };
    Schedule past = starter;
    for (auto& each : past.tasks) {
        if (one(3) == 0)
            each.howTo = "otherwise " + std::to_string(one(100));
        if (one(3) == 0)
            each.minutes = units::Minutes{each.minutes.count() + 1};
        if (one(3) == 0 && !each.edges.empty())
            each.edges.pop_back();
        if (one(3) == 0 && !each.kit.empty())
            each.kit.pop_back();
    }
    for (auto& each : past.steps)
        if (one(2) == 0 && !each.doings.empty() && each.edges.empty())
            each.off = units::Minutes{each.off.count() + 1};
    adopt(past);
    std::map<std::string, std::string> own;
    for (const auto& each : past.tasks)
        if (one(4) == 0) {
            auto mine = task(each.code);
            mine.howTo = own[each.code] = "my own way";
            must(saying(verbs::saveTask, mine));
        }
    ASSERT_GT(own.size(), 10U);
    ASSERT_GT(said(starter).size(), 40U);
    takeAll(starter);
    EXPECT_EQ(said(starter), Names{});
    for (const auto& each : starter.tasks) {
        auto stands = task(each.code);
        if (own.contains(each.code)) {
            EXPECT_EQ(stands.howTo, "my own way");
            stands.howTo = each.howTo;
        }
        stands.task = each.task;
        stands.machine = each.machine;
        EXPECT_TRUE(sameWords(stands, each)) << each.code;
    }
}

}  // namespace
}  // namespace wm::definitions
