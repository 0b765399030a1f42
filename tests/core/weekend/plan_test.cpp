// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/plan.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/core/weekend/act_words.h"
#include "tests/core/weekend/generic_machine.h"

namespace wm::weekend {
namespace {

using base::Fault;
using testing::ElementsAre;
using testing::HasSubstr;
using upkeep::BodyState;

base::Result<Plan> planOn(const std::vector<StepVersion>& steps, const std::vector<Job>& jobs) {
    return planWork(pointersTo(steps), jobs);
}

struct Bundle {
    const char* name;
    bool someModels;
    std::vector<Job> jobs;
    std::int64_t alone;
    std::int64_t shared;
};

// Expected minutes: jobs that are done together, worked by hand (minutes common practice, from memory; the
// sums are arithmetic).
std::vector<Bundle> workedBundles() {
    return {
        {"rear evening",
         true,
         {makeJob("tyre", 35, {"RWH"}), makeJob("wheel bearings", 40, {"RWH"}),
          makeJob("linkage", 35, {"LNK"}), makeJob("chain kit", 45, {"CHN", "RWH"})},
         250,
         202},
        {"rear strip",
         true,
         {makeJob("linkage", 35, {"LNK"}), makeJob("swingarm and slider", 50, {"SWA"}),
          makeJob("shock eye", 20, {"SHK"}), makeJob("wheel bearings", 40, {"RWH"})},
         379,
         283},
        {"front",
         true,
         {makeJob("tyre", 30, {"FWH"}), makeJob("wheel bearings", 40, {"FWH"}),
          makeJob("fork service", 150, {"FRK"}), makeJob("head bearings", 30, {"STM"}),
          makeJob("bars", 20, {"BAR"})},
         437,
         347},
        {"four-stroke top end",
         true,
         {makeJob("valve check", 30, {"VCV"}), makeJob("cam chain", 50, {"CAM"}),
          makeJob("piston and bore", 85, {"CY4"}), makeJob("coolant", 5, {"COO"}),
          makeJob("repack", 40, {"SIL"})},
         631,
         461},
        {"two-stroke top end",
         false,
         {makeJob("piston and bore", 75, {"CY2"}), makeJob("power valve", 40, {"CY2"}),
          makeJob("reeds", 20, {"INT"}), makeJob("coolant", 5, {"COO"}),
          makeJob("pressure test", 35, {"HDR", "INT"})},
         517,
         317},
    };
}

TEST(PlanTest, CountsSharedAccessOnceAsInTheWorkedBundles) {
    for (const Bundle& bundle : workedBundles()) {
        const auto plan = planOn(genericMachine(bundle.someModels), bundle.jobs);
        ASSERT_TRUE(plan.has_value()) << bundle.name;
        EXPECT_EQ(plan->alone.count(), bundle.alone) << bundle.name;
        EXPECT_EQ(plan->work.count(), bundle.shared) << bundle.name;
    }
}

// Cumulative access, off + on, added up by hand; the second figure without the needs of some models only.
TEST(OpeningTest, AddsUpToTheCumulativeAccess) {
    struct Row {
        const char* code;
        std::int64_t with;
        std::int64_t without;
    };
    const Row rows[] = {{"STD", 5, 5},     {"SEA", 8, 8},     {"PNL", 10, 10},   {"FLT", 14, 14},
                        {"TNK", 22, 22},   {"SIL", 19, 19},   {"HDR", 34, 34},   {"SUB", 46, 46},
                        {"INT", 81, 43},   {"FWH", 16, 16},   {"FCL", 13, 13},   {"FRK", 40, 40},
                        {"BAR", 18, 18},   {"STM", 77, 77},   {"RWH", 16, 16},   {"CHN", 12, 12},
                        {"LNK", 40, 40},   {"SHK", 101, 60},  {"SWA", 77, 77},   {"COO", 19, 19},
                        {"RAD", 56, 56},   {"OIL", 14, 14},   {"CLC", 15, 15},   {"PRC", 70, 70},
                        {"IGC", 17, 17},   {"VCV", 43, 43},   {"CAM", 89, 89},   {"HD2", 60, 43},
                        {"CY2", 166, 104}, {"HD4", 219, 195}, {"CY4", 251, 227}, {"ENG", 226, 202}};
    for (const bool someModels : {true, false}) {
        const auto steps = genericMachine(someModels);
        for (const Row& row : rows) {
            const std::vector<std::string> codes{row.code};
            const auto opened = opening(pointersTo(steps), codes);
            ASSERT_TRUE(opened.has_value());
            std::int64_t sum = 0;
            for (const StepVersion* step : *opened)
                sum += (step->off + step->on).count();
            EXPECT_EQ(sum, someModels ? row.with : row.without) << row.code;
            EXPECT_EQ(opened->back()->code, row.code);
        }
    }
}

TEST(PlanTest, DoesEachJobAsSoonAsItIsReachedAndRefitsBackwards) {
    const auto plan = planOn(genericMachine(true), workedBundles()[0].jobs);
    EXPECT_THAT(actWords(*plan),
                ElementsAre("crack RWH", "-STD", "crack CHN", "-RWH", "tyre", "wheel bearings", "-LNK",
                            "linkage", "-CHN", "chain kit", "+CHN", "+LNK", "+RWH", "+STD", "stop"));
    EXPECT_THAT(plan->opened, ElementsAre("STD", "RWH", "LNK", "CHN"));
    EXPECT_EQ(plan->acts.back().text, "Safe to stop here: the machine is whole");
}

TEST(PlanTest, TakesOffWhatLiesOverAFastenerBeforeItIsCracked) {
    // The stem nut is cracked while the fork is in, and the bars lie over it.
    const auto plan = planOn(genericMachine(true),
                             {makeJob("fork service", 150, {"FRK"}), makeJob("head bearings", 30, {"STM"})});
    EXPECT_THAT(actWords(*plan), ElementsAre("crack FWH", "-STD", "-FWH", "-FCL", "-BAR", "crack FRK",
                                             "crack STM", "-FRK", "fork service", "-STM", "head bearings",
                                             "+STM", "+FRK", "+BAR", "+FCL", "+FWH", "+STD", "stop"));
}

TEST(PlanTest, ClosesOneStageBeforeTheNextAndSaysWhatIsStillOpen) {
    const auto plan =
        planOn(genericMachine(true), {makeJob("rear tyre", 35, {"RWH"}), makeJob("front tyre", 30, {"FWH"})});
    EXPECT_THAT(actWords(*plan), ElementsAre("crack RWH", "crack FWH", "-STD", "-RWH", "rear tyre", "+RWH",
                                             "stop", "-FWH", "front tyre", "+FWH", "+STD", "stop"));
    EXPECT_EQ(plan->acts[6].text,
              "You can stop here, on the stand only. Back on: rwh. Still: std. Cracked loose, not to be "
              "ridden or wheeled: pinch bolts and axle nut, wheel "
              "on the ground.");
    EXPECT_EQ(plan->work.count(), 35 + 30 + 5 + 11 + 11);
}

TEST(PlanTest, AStopNamesWhatIsOffAndNotWhatWasMadeReady) {
    const std::vector<StepVersion> steps{{.code = "STD", .name = "Clean, cold, on the stand"},
                                         {.code = "SEA", .name = "Seat off", .needs = {{"STD"}}},
                                         {.code = "RWH", .name = "Rear wheel out", .needs = {{"STD"}}}};
    auto out = makeJob("seat to the upholsterer", 5, {"SEA"});
    const auto seat = makeJob("seat bracket", 5, {"SEA"});
    const auto tyre = makeJob("rear tyre", 35, {"RWH"});
    const auto stopsOf = [&](const std::vector<Job>& jobs) {
        std::vector<std::string> stops;
        const auto plan = planOn(steps, jobs);
        for (const Act& act : plan->acts)
            if (act.kind == ActKind::SafeStop)
                stops.push_back(act.text);
        return stops;
    };
    EXPECT_THAT(stopsOf({tyre, seat}),
                ElementsAre("Safe to stop here. Back on: Rear wheel. Still on the stand.",
                            "Safe to stop here: the machine is whole"));
    out.sendsOut = true;
    EXPECT_THAT(stopsOf({out}), ElementsAre("Safe to stop here. Still on the stand. Still: Seat off."));
}

TEST(PlanTest, RunsTheEngineOnlyWhenTheRestIsClosed) {
    const auto plan =
        planOn(genericMachine(true),
               {makeJob("oil", 15, {"OIL"}, BodyState::Warm), makeJob("idle", 5, {}, BodyState::Warm),
                makeJob("valve check", 30, {"VCV"}, BodyState::Cold), makeJob("pressures", 3, {})});
    EXPECT_THAT(actWords(*plan), ElementsAre("pressures", "-STD", "-SEA", "-TNK", "-VCV", "valve check",
                                             "+VCV", "+TNK", "+SEA", "+STD", "stop", "run", "idle", "-STD",
                                             "-OIL", "oil", "+OIL", "+STD", "stop"));
    EXPECT_EQ(plan->acts[10].text, "Safe to stop here: the machine is whole");
    EXPECT_EQ(plan->work.count(), 15 + 5 + 30 + 3 + 43 + 5 + 5 + 9)
        << "two openings, five minutes of running";
    EXPECT_EQ(plan->waiting.count(), 0);
    // A water pump and an oil change share the drain plug: the engine is not run with the pump out.
    const auto shared = planOn(genericMachine(true), {makeJob("oil", 15, {"OIL"}, BodyState::Warm),
                                                      makeJob("water pump", 40, {"PRC"})});
    EXPECT_THAT(actWords(*shared),
                ElementsAre("-STD", "-OIL", "-COO", "-CLC", "-PRC", "water pump", "+PRC", "+CLC", "+COO",
                            "+OIL", "+STD", "stop", "run", "-STD", "-OIL", "oil", "+OIL", "+STD", "stop"));
}

TEST(PlanTest, OneRunIsForAllWorkOnAWarmEngine) {
    const auto plan = planOn(genericMachine(true), {makeJob("oil", 15, {"OIL", "SEA"}, BodyState::Warm),
                                                    makeJob("valve check", 30, {"VCV"}, BodyState::Cold),
                                                    makeJob("filter", 5, {"OIL"}, BodyState::Warm)});
    EXPECT_THAT(actWords(*plan), ElementsAre("-STD", "-SEA", "-TNK", "-VCV", "valve check", "+VCV", "+TNK",
                                             "+SEA", "+STD", "stop", "run", "-STD", "-OIL", "filter", "-SEA",
                                             "oil", "+SEA", "+OIL", "+STD", "stop"));
    EXPECT_THAT(plan->opened, ElementsAre("STD", "SEA", "TNK", "VCV", "OIL"));
}

TEST(PlanTest, WhatStaysOpenIsOpenedLastAndWaitsForTheEngineToCool) {
    auto out = makeJob("shock out", 20, {"SHK"});
    out.sendsOut = true;
    out.bodyState = BodyState::Cold;
    const auto oil = makeJob("oil", 15, {"OIL"}, BodyState::Warm);
    const auto valves = makeJob("valve check", 30, {"VCV"}, BodyState::Cold);
    const auto machine = genericMachine(false);
    const auto plan =
        planWork(pointersTo(machine), std::vector<Job>{out, oil, valves},
                 PlanTerms{.times = {.toWarm = units::Minutes{7}, .toCold = units::Minutes{120}}});
    EXPECT_THAT(actWords(*plan),
                ElementsAre("-STD", "-SEA", "-TNK", "-VCV", "valve check", "+VCV", "+TNK", "+SEA", "+STD",
                            "stop", "run", "-STD", "-OIL", "oil", "+OIL", "+STD", "stop", "wait", "crack RWH",
                            "-STD", "-RWH", "-LNK", "-SHK", "shock out", "stop"));
    EXPECT_EQ(plan->acts[17].minutes.count(), 120 - 5 - 9 - 15) << "it cools while the oil is changed";
    EXPECT_EQ(plan->acts[18].starts.count(), 30 + 43 + 7 + 120);
    EXPECT_EQ(plan->waiting.count(), 91);
}

TEST(PlanTest, SaysThatAMachineThatIsNotWholeIsNotRunYet) {
    const auto steps = genericMachine(true);
    const std::vector<Job> jobs{makeJob("idle", 5, {}, BodyState::Warm)};
    EXPECT_EQ(planWork(pointersTo(steps), jobs)->acts[0].text, "Run the engine until it is warm, outside");
    EXPECT_THAT(planWork(pointersTo(steps), jobs, PlanTerms{.isElseWhole = false})->acts[0].text,
                HasSubstr("not before what else"));
}

TEST(PlanTest, CountsMinutesFromTheStartWithoutGaps) {
    const auto plan = planOn(genericMachine(true), {makeJob("tyre", 35, {"RWH"})});
    std::vector<std::int64_t> starts;
    for (const Act& act : plan->acts)
        starts.push_back(act.starts.count());
    EXPECT_THAT(starts, ElementsAre(0, 0, 3, 7, 42, 49, 51));
    EXPECT_EQ(plan->work.count(), 51);
}

TEST(PlanTest, PlansNothingForNoJobs) {
    const auto plan = planOn(genericMachine(true), {});
    ASSERT_TRUE(plan.has_value());
    EXPECT_TRUE(plan->acts.empty());
    EXPECT_EQ(plan->work.count(), 0);
}

TEST(PlanTest, LeavesOutANeedThatThisModelDoesNotHave) {
    const auto plan = planOn(genericMachine(false), {makeJob("shock", 20, {"SHK"})});
    EXPECT_THAT(plan->opened, ElementsAre("STD", "RWH", "LNK", "SHK"));
}

TEST(PlanTest, WhatIsOpenForSomethingSentOutStaysOpen) {
    auto out = makeJob("shock out", 20, {"SHK"});
    out.sendsOut = true;
    const auto plan = planOn(genericMachine(false), {out, makeJob("front pads", 20, {"FWH"})});
    ASSERT_TRUE(plan.has_value());
    // The rest is closed and can be ridden off the stand before.
    EXPECT_THAT(actWords(*plan),
                ElementsAre("crack FWH", "-STD", "-FWH", "front pads", "+FWH", "+STD", "stop", "crack RWH",
                            "-STD", "-RWH", "-LNK", "-SHK", "shock out", "stop"));
    EXPECT_THAT(plan->acts.back().text, testing::HasSubstr("Still: "));
    EXPECT_THAT(plan->acts.back().text, testing::Not(testing::HasSubstr("whole")));
}

TEST(PlanTest, RefusesAStepThatIsNotThere) {
    const auto plan = planOn(genericMachine(true), {makeJob("tyre", 35, {"RWH", "XYZ"})});
    ASSERT_FALSE(plan.has_value());
    EXPECT_EQ(plan.error(), (base::Error{Fault::Unknown, "step", "XYZ", ""}));
    auto steps = genericMachine(true);
    steps[0].needs.push_back({"GONE"});
    EXPECT_EQ(planOn(steps, {makeJob("tyre", 35, {"RWH"})}).error(),
              (base::Error{Fault::Unknown, "step", "GONE", ""}));
}

TEST(PlanTest, RefusesStepsThatNeedEachOther) {
    auto steps = genericMachine(true);
    steps[0].needs.push_back({"RWH"});
    const auto plan = planOn(steps, {makeJob("tyre", 35, {"RWH"})});
    ASSERT_FALSE(plan.has_value());
    EXPECT_EQ(plan.error().fault, Fault::Cycle);
    EXPECT_TRUE(planOn(steps, {makeJob("pressures", 3, {})}).has_value()) << "the cycle is out of reach";
}

// The nut of C is cracked while A and B are on. B is off and on again for the first job, but A stays off.
TEST(PlanTest, CracksBeforeAllElseWhatCannotBeCrackedLater) {
    std::vector<StepVersion> steps(3);
    for (std::size_t at = 0; at < 3; ++at)
        steps[at].code = steps[at].name = std::string(1, static_cast<char>('A' + at));
    steps[1].needs = {{"A"}};
    steps[2].needs = {{"A"}};
    steps[2].breakLoose = "nut";
    steps[2].looseBefore = {{"A"}, {"B"}};
    const auto plan =
        planWork(pointersTo(steps), std::vector{makeJob("one", 1, {"B"}), makeJob("two", 1, {"C"})});
    ASSERT_TRUE(plan.has_value()) << plan.error().given;
    EXPECT_EQ(plan->acts.front().kind, ActKind::BreakLoose);
    EXPECT_EQ(plan->acts.front().step, "C");
}

TEST(PlanTest, IsNotBoundByALooseBeforeThatNamesNoStep) {
    auto steps = genericMachine(true);
    for (StepVersion& step : steps)
        if (step.code == "RWH")
            step.looseBefore = {{"GONE"}};
    const auto plan = planOn(steps, {makeJob("tyre", 35, {"RWH"})});
    ASSERT_TRUE(plan.has_value());
    EXPECT_THAT(actWords(*plan), ElementsAre("-STD", "crack RWH", "-RWH", "tyre", "+RWH", "+STD", "stop"));
}

}  // namespace
}  // namespace wm::weekend
