// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The plan for the first hours with a machine of unknown history.
#include "core/book/first_hours.h"

#include <map>
#include <set>

#include "core/book/unrecorded.h"
#include "tests/core/verbs/bench.h"

namespace wm::book {

using namespace verbs;

namespace {

using units::Minutes;
using upkeep::Consequence;
using upkeep::Counter;

class FirstHoursTest : public testing::Test, public Bench {
  protected:
    FirstHoursTest() {
        must([](const VerbContext& context) {
            return saveMachine(context, {.name = "Sorrel 450", .since = day("2026-03-01"), .pastHigh = {}});
        });
        sorrel = last<items::Machine>();
        must([this](const VerbContext& context) {
            return adoptSchedule(context, sorrel, "took over",
                                 {{.code = "stand", .name = "Stand", .off = Minutes{1}, .on = Minutes{1}},
                                  {.code = "wheel",
                                   .name = "Wheel",
                                   .off = Minutes{5},
                                   .on = Minutes{6},
                                   .needs = {{"stand"}}},
                                  {.code = "tank", .name = "Tank", .off = Minutes{4}, .on = Minutes{4}}},
                                 {},
                                 {{.name = "pads",
                                   .consequence = Consequence::SafetyEvident,
                                   .limits = {{.every = 1500}},
                                   .steps = {{"wheel"}},
                                   .minutes = Minutes{20}},
                                  {.name = "bearings",
                                   .consequence = Consequence::SafetyEvident,
                                   .limits = {{.every = 3500}},
                                   .steps = {{"wheel"}},
                                   .minutes = Minutes{40}},
                                  {.name = "tyre",
                                   .consequence = Consequence::EndsRace,
                                   .limits = {{.every = 1000}},
                                   .steps = {{"wheel"}},
                                   .minutes = Minutes{35}},
                                  {.name = "chain",
                                   .consequence = Consequence::EndsRace,
                                   .limits = {{.every = 500}},
                                   .steps = {{"stand"}},
                                   .minutes = Minutes{10}},
                                  {.name = "plug",
                                   .consequence = Consequence::EndsRace,
                                   .limits = {{.every = 1000}},
                                   .steps = {{"tank"}},
                                   .minutes = Minutes{5}},
                                  {.name = "coolant",
                                   .consequence = Consequence::HiddenWear,
                                   .limits = {{.counter = Counter::Months, .every = 12}},
                                   .minutes = Minutes{15}},
                                  {.name = "filter",
                                   .consequence = Consequence::HiddenWear,
                                   .limits = {{.counter = Counter::Outings, .every = 1}},
                                   .minutes = Minutes{8}},
                                  {.name = "oil",
                                   .consequence = Consequence::HiddenWear,
                                   .limits = {{.every = 600}},
                                   .minutes = Minutes{20}},
                                  {.name = "oil filter",
                                   .consequence = Consequence::HiddenWear,
                                   .nthOf = "oil",
                                   .nth = 2,
                                   .minutes = Minutes{5}}});
        });
    }
    static std::vector<std::string> names(const FirstGroup& group) {
        std::vector<std::string> names;
        for (const auto* line : group.jobs)
            names.push_back(line->task->name);
        return names;
    }
    MachineId sorrel;
};

using Names = std::vector<std::string>;

TEST_F(FirstHoursTest, SafetyAtOnceAndTheRestByItsInterval) {
    const Book now = book();
    std::map<FirstStage, Names> plan;
    for (const auto& group : firstHours(now, sorrel))
        plan[group.stage] = names(group);
    EXPECT_EQ(plan, (std::map<FirstStage, Names>{{FirstStage::AtOnce, {"bearings", "pads"}},
                                                 {FirstStage::WhileOpen, {"tyre"}},
                                                 {FirstStage::By5, {"chain"}},
                                                 {FirstStage::By10, {"oil", "plug"}},
                                                 {FirstStage::By20, {"coolant"}},
                                                 {FirstStage::EachRide, {"filter"}},
                                                 {FirstStage::WithAJob, {"oil filter"}}}));
}

TEST_F(FirstHoursTest, AKnownHighEndPutsOffWhatCannotBeDue) {
    must([this](const VerbContext& context) {
        auto card = *context.book.ledger().find<items::Machine>(sorrel);
        card.pastBest = units::Hours{500};
        card.pastHigh = units::Hours{1200};
        return saveMachine(context, card);
    });
    const Book now = book();
    std::map<FirstStage, Names> plan;
    for (const auto& group : firstHours(now, sorrel))
        plan[group.stage] = names(group);
    // At most 12 h behind it: the pads have 3 h left, the bearings 23 h; the tyre, every 10 h, may be over.
    EXPECT_EQ(plan.count(FirstStage::AtOnce), 0U);
    EXPECT_EQ(plan[FirstStage::By5], (Names{"pads", "chain"}));
    EXPECT_EQ(plan[FirstStage::Later], (Names{"bearings"}));
    EXPECT_EQ(plan[FirstStage::By20], (Names{"coolant"}));
}

// The worst is that it was never done, so its run-in counts, and that every hour was as hard as any can be.
TEST_F(FirstHoursTest, TheWorstIsTheRunInAndTheHardestHour) {
    must([this](const VerbContext& context) {
        auto card = *context.book.ledger().find<items::Machine>(sorrel);
        card.pastBest = units::Hours{500};
        card.pastHigh = units::Hours{1200};
        return saveMachine(context, card);
    });
    const auto stageOf = [this](const upkeep::TaskVersion& version) {
        must(saying(saveTask, version));
        const Book now = book();
        for (const auto& group : firstHours(now, sorrel))
            for (const auto* line : group.jobs)
                if (line->task->name == version.name)
                    return group.stage;
        ADD_FAILURE() << version.name << " is not in the plan";
        return FirstStage::WithAJob;
    };
    upkeep::TaskVersion task{.machine = sorrel,
                             .name = "stem",
                             .consequence = Consequence::SafetyEvident,
                             .limits = {{.every = 3500}}};
    EXPECT_EQ(stageOf(task), FirstStage::Later);  // 35 - 12 = 23 h
    task.name = "stem run in";
    task.limits.front().first = 2000;  // 20 - 12 = 8 h
    EXPECT_EQ(stageOf(task), FirstStage::By10);
    task.name = "stem in mud";
    task.limits.front().first.reset();
    task.weights = {{.ground = usage::Ground::Sand, .permille = 1'200},
                    {.ground = usage::Ground::Mud, .permille = 1'500},
                    {.ground = usage::Ground::Dust, .permille = 500}};
    EXPECT_EQ(stageOf(task), FirstStage::By20);  // 35 / 1.5 = 23.3, less 12 = 11.3 h
    task.name = "stem in mud, run in late";
    task.limits.front().first = 9000;  // done at some time, every 35 h holds
    EXPECT_EQ(stageOf(task), FirstStage::By20);
}

TEST_F(FirstHoursTest, AnOpeningIsPaidOnce) {
    const Book now = book();
    const auto groups = firstHours(now, sorrel);
    // Stand 2 and wheel 11 min once, 20 and 40 min of work: 73; one by one 33 + 53 = 86.
    EXPECT_EQ(groups.at(0).work, Minutes{73});
    EXPECT_EQ(groups.at(0).alone, Minutes{86});
    EXPECT_EQ(groups.at(0).opened.size(), 2U);
    // The tyre is behind the same wheel: 35 min, 48 by itself.
    EXPECT_EQ(groups.at(1).work, Minutes{35});
    EXPECT_EQ(groups.at(1).alone, Minutes{48});
    EXPECT_TRUE(groups.at(1).opened.empty());
}

TEST_F(FirstHoursTest, WhatIsRecordedLeavesThePlan) {
    const auto count = [this] {
        const Book now = book();
        std::set<TaskId> tasks;
        std::size_t jobs = 0;
        for (const auto& group : firstHours(now, sorrel))
            for (const auto* line : group.jobs) {
                tasks.insert(line->task->task);
                ++jobs;
            }
        EXPECT_EQ(tasks.size(), jobs);  // each once
        EXPECT_EQ(jobs, unknownOf(now, sorrel).size());
        return jobs;
    };
    EXPECT_EQ(count(), 9U);
    const auto pads = ledger().all<upkeep::TaskVersion>().front().task;
    must(record({.record = {.machine = sorrel, .task = pads, .date = day("2026-05-01")}}));
    EXPECT_EQ(count(), 8U);
    EXPECT_TRUE(firstHours(book(), MachineId{3}).empty());
}

}  // namespace
}  // namespace wm::book
