// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// A starter schedule made to fit in one go.
#include "core/verbs/adjust_verb.h"

#include <rapidcheck.h>

#include "tests/core/verbs/bench.h"

namespace wm::verbs {

using book::Book;

namespace {

using base::Fault;
using upkeep::Counter;
using upkeep::Limit;

class AdjustTest : public testing::Test, public Bench {
  protected:
    AdjustTest() {
        must([](const VerbContext& context) {
            return saveMachine(context,
                               {.name = "Heron 250", .since = day("2026-01-10"), .startedNew = true});
        });
        heron = last<items::Machine>();
        must([this](const VerbContext& context) {
            return adoptSchedule(
                context, heron, "took over",
                {{.code = "tank", .name = "Tank"},
                 {.code = "cover", .name = "Cover", .needs = {{"tank", true, false}}},
                 {.code = "engine", .name = "Engine", .needs = {{"tank"}}}},
                {},
                {{.name = "Oil",
                  .limits = {{.every = 600, .first = 150, .allowance = 100}},
                  .kit = {{.what = "engine oil", .amount = 850, .unit = upkeep::Unit::Millilitre},
                          {.what = "oil filter", .source = "the seller"}},
                  .source = "common practice"},
                 {.name = "Fluid",
                  .limits = {{.counter = Counter::Months, .every = 9}, {.every = 2500}},
                  .kit = {{.what = "fluid", .amount = 100, .unit = upkeep::Unit::Millilitre}}},
                 {.name = "Crank", .limits = {{.every = 10000, .hard = true}}},
                 {.name = "Linkage", .limits = {{.counter = Counter::Washes, .every = 3}}},
                 {.name = "Valves", .limits = {{.every = 1500}}, .source = "manual", .confirmed = true}});
        });
        for (const auto& version : ledger().all<upkeep::TaskVersion>())
            tasks.push_back(version.task);
        for (const auto& version : ledger().all<weekend::StepVersion>())
            steps.push_back(version.step);
    }
    [[nodiscard]] Verb adjusted(Adjustment adjustment) const {
        return saying(adjustSchedule, heron, std::move(adjustment));
    }
    std::vector<Limit> limits(std::size_t task) { return book().task(tasks.at(task))->limits; }
    bool applies(std::size_t step) {
        const Book now = book();
        for (const auto* each : now.steps(heron))
            if (each->step == steps.at(step))
                return each->needs.at(0).applies;
        return false;
    }

    MachineId heron;
    std::vector<TaskId> tasks;
    std::vector<StepId> steps;
};

TEST_F(AdjustTest, ScalesWhatUseWearsAndNothingElse) {
    const auto before = ledger().all<upkeep::TaskVersion>().size();
    EXPECT_EQ(must(adjusted({.percent = 80})), "adjusted the schedule of Heron 250");
    // 6.0, 1.5 and 1.0 h at 80 %.
    EXPECT_EQ(limits(0), (std::vector<Limit>{{.every = 480, .first = 120, .allowance = 80}}));
    EXPECT_EQ(limits(1), (std::vector<Limit>{{.counter = Counter::Months, .every = 9}, {.every = 2000}}));
    EXPECT_EQ(limits(2), (std::vector<Limit>{{.every = 8000, .hard = true}}));
    EXPECT_EQ(limits(3), (std::vector<Limit>{{.counter = Counter::Washes, .every = 2}}));  // 2.4
    EXPECT_EQ(limits(4), (std::vector<Limit>{{.every = 1500}}));  // confirmed against the manual
    EXPECT_EQ(ledger().all<upkeep::TaskVersion>().size(), before + 4);
    EXPECT_EQ(book().task(tasks[0])->source, "80 % of common practice");
    EXPECT_EQ(book().task(tasks[0])->validFrom, today);
    EXPECT_EQ(book().task(tasks[0])->code, "oil");
}

// Only the interval was scaled: how much a job takes is said by whoever said it before.
TEST_F(AdjustTest, AmountsKeepTheirSource) {
    must(adjusted({.percent = 80}));
    EXPECT_EQ(book().task(tasks[0])->kit[0].source, "common practice");
    EXPECT_EQ(book().task(tasks[0])->kit[1].source, "the seller");
    EXPECT_EQ(book().task(tasks[1])->kit[0].source, "no source");
    // And what had one keeps it, whatever comes later.
    must(adjusted({.percent = 125}));
    EXPECT_EQ(book().task(tasks[0])->source, "125 % of 80 % of common practice");
    EXPECT_EQ(book().task(tasks[0])->kit[0].source, "common practice");
    EXPECT_EQ(book().task(tasks[1])->kit[0].source, "no source");
}

TEST_F(AdjustTest, ALifeLimitIsNeverStretched) {
    must(adjusted({.percent = 150}));
    EXPECT_EQ(limits(2), (std::vector<Limit>{{.every = 10000, .hard = true}}));
    EXPECT_EQ(limits(0).front().every, 900);
}

TEST_F(AdjustTest, SwitchesTasksAndEdgesInTheSameGo) {
    must(adjusted({.percent = 50, .off = {tasks[3], tasks[0]}, .edges = {{steps[1], "tank", true}}}));
    EXPECT_FALSE(book().task(tasks[0])->active);
    EXPECT_EQ(limits(0).front().every, 300);  // one version says both
    EXPECT_EQ(book().tasks(heron).size(), 3U);
    EXPECT_TRUE(applies(1));
    must(adjusted({.on = {tasks[0]}, .edges = {{steps[1], "tank", false}}}));
    EXPECT_TRUE(book().task(tasks[0])->active);
    EXPECT_FALSE(applies(1));
}

TEST_F(AdjustTest, RefusesWhatMakesNoSense) {
    EXPECT_EQ(refusedAt(adjusted({})), (At{Fault::NothingToDo, "percent"}));
    EXPECT_EQ(refusedAt(adjusted({.percent = 0})), (At{Fault::NotPositive, "percent"}));
    EXPECT_EQ(refusedAt(adjusted({.percent = -20})), (At{Fault::NotPositive, "percent"}));
    EXPECT_EQ(refusedAt(adjusted({.percent = 501})), (At{Fault::TooLarge, "percent"}));
    EXPECT_EQ(refusedAt(adjusted({.off = {tasks[0], TaskId{7}}})), (At{Fault::Unknown, "off[1].task"}));
    EXPECT_EQ(refusedAt(adjusted({.off = {tasks[0]}, .on = {tasks[0]}})),
              (At{Fault::Duplicate, "on[0].task"}));
    EXPECT_EQ(refusedAt(adjusted({.on = {tasks[0]}})), (At{Fault::NothingToDo, "percent"}));  // it is on
    EXPECT_EQ(refusedAt(adjusted({.edges = {{StepId{7}, "tank", true}}})),
              (At{Fault::Unknown, "edges[0].step"}));
    EXPECT_EQ(refusedAt(adjusted({.edges = {{steps[1], "seat", true}}})),
              (At{Fault::Unknown, "edges[0].needs"}));
    EXPECT_EQ(refusedAt(adjusted({.edges = {{steps[2], "tank", false}}})),
              (At{Fault::Inconsistent, "edges[0].needs"}));  // the engine is behind the tank on all models
    EXPECT_EQ(refusedAt(adjusted({.edges = {{steps[1], "tank", true}, {steps[1], "tank", false}}})),
              (At{Fault::Duplicate, "edges[1].needs"}));
}

// By long hand: how many grains lie nearest, halves up, counted one by one.
std::int64_t nearest(std::int64_t amount, std::int64_t percent, std::int64_t grain) {
    std::int64_t grains = 1;
    while ((2 * grains + 1) * grain * 100 <= 2 * amount * percent)
        ++grains;
    return grains * grain;
}

TEST(AdjustProperties, AScaledLimitIsTheNearestSayableFigure) {
    EXPECT_TRUE(rc::check("nearest", [] {
        const auto counter =
            *rc::gen::element(Counter::Hours, Counter::Outings, Counter::Washes, Counter::Metres);
        const std::int64_t grain = counter == Counter::Hours ? 10 : counter == Counter::Metres ? 1000 : 1;
        const auto every =
            *rc::gen::inRange<std::int64_t>(1, 300) * grain / (counter == Counter::Hours ? 2 : 1);
        const auto percent = *rc::gen::inRange<std::int64_t>(1, 501);
        upkeep::TaskVersion task;
        task.limits = {{.counter = counter, .every = std::max<std::int64_t>(every, 1)}};
        const auto scaled = scaledLimits(task, percent);
        RC_ASSERT(scaled.front().every == nearest(task.limits.front().every, percent, grain));
        task.confirmed = true;
        RC_ASSERT(scaledLimits(task, percent) == task.limits);
    }));
}

}  // namespace
}  // namespace wm::verbs
