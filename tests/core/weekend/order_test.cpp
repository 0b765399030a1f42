// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What steps and tasks say of the order of work: edges, doings, the engine warm and cold.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/weekend/check_order.h"
#include "core/weekend/plan.h"
#include "tests/core/weekend/act_words.h"
#include "tests/core/weekend/generic_machine.h"

namespace wm::weekend {
namespace {

using base::Fault;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;
using upkeep::BodyState;
using upkeep::Comes;
using upkeep::Deed;
using upkeep::Edge;

Edge edge(Deed earlier, const char* earlierCode, Deed later, const char* laterCode) {
    return {{earlier, earlierCode}, {later, laterCode}};
}

StepVersion step(const char* code, const std::vector<const char*>& needs,
                 const std::vector<const char*>& joints = {}) {
    StepVersion made;
    made.code = code;
    made.name = std::string(code) + " off";
    made.off = units::Minutes{5};
    made.on = units::Minutes{5};
    for (const char* need : needs)
        made.needs.push_back({need});
    for (const char* joint : joints)
        made.joints.push_back({joint});
    return made;
}

// A machine on its stand with a wheel at each end, oil, a cover.
class OrderTest : public testing::Test {
  protected:
    OrderTest() {
        steps_ = {step("stand", {}), step("rear", {"stand"}, {"nut", "locks"}),
                  step("front", {"stand"}, {"pinch"}), step("oil", {}, {"plug"}),
                  step("cover", {"stand", "oil"})};
        of("rear").edges = {
            edge(Deed::Crack, "nut", Deed::Off, "stand"), edge(Deed::Do, "pump", Deed::Torque, "nut"),
            edge(Deed::Do, "slack", Deed::Torque, "locks"), edge(Deed::Torque, "nut", Deed::Do, "slack")};
        of("rear").doings = {{.code = "pump", .what = "Pump"}, {.code = "slack", .what = "Slack again"}};
        of("front").edges = {edge(Deed::On, "stand", Deed::Torque, "pinch")};
        of("front").doings = {{.code = "pump", .what = "Pump"}};
        of("oil").bodyState = BodyState::Warm;
        of("oil").doings = {{.code = "run", .what = "Run it", .minutes = units::Minutes{3}, .runs = true},
                            {.code = "level", .what = "Level"}};
        of("oil").edges = {edge(Deed::Do, "run", Deed::Do, "level")};
    }

    StepVersion& of(const std::string& code) {
        return *std::find_if(steps_.begin(), steps_.end(),
                             [&](const auto& each) { return each.code == code; });
    }
    std::size_t task(const char* code, const std::vector<const char*>& needs) {
        upkeep::TaskVersion made;
        made.code = code;
        made.name = code;
        made.minutes = units::Minutes{10};
        for (const char* need : needs)
            made.steps.push_back({need});
        tasks_.push_back(std::move(made));
        return tasks_.size() - 1;
    }
    [[nodiscard]] base::Result<Plan> plan(PlanTerms terms = {}) const {
        std::vector<Job> jobs;
        for (const upkeep::TaskVersion& each : tasks_) {
            Job job{.name = each.name,
                    .minutes = each.minutes,
                    .bodyState = each.bodyState,
                    .sendsOut = each.sendsOut,
                    .definition = &each};
            for (const base::Code& code : each.steps)
                job.steps.push_back(code.code);
            jobs.push_back(std::move(job));
        }
        return planWork(pointersTo(steps_), jobs, terms);
    }
    [[nodiscard]] std::vector<std::string> words(const PlanTerms& terms = {}) const {
        const auto made = plan(terms);
        return made ? actWords(*made) : std::vector<std::string>{made.error().given};
    }

    std::vector<StepVersion> steps_;
    std::vector<upkeep::TaskVersion> tasks_;
};

TEST_F(OrderTest, AJointIsCrackedOnTheGroundAndTorquedInItsPlace) {
    task("tyre", {"rear"});
    EXPECT_THAT(words(), ElementsAre("crack nut", "-stand", "-rear", "tyre", "+rear", "do pump", "torque nut",
                                     "do slack", "torque locks", "+stand", "stop"));
}

TEST_F(OrderTest, AJointOfWhichNoEdgeSpeaksHasNoActOfItsOwn) {
    of("rear").edges.clear();
    of("rear").doings.clear();
    task("tyre", {"rear"});
    const auto made = plan();
    EXPECT_THAT(actWords(*made), ElementsAre("-stand", "-rear", "tyre", "+rear", "+stand", "stop"));
    EXPECT_THAT(made->acts[3].torques, ElementsAre("nut", "locks"));
}

TEST_F(OrderTest, WhatTwoStepsAskForIsDoneOnceWhenBothAreOn) {
    of("rear").edges = {edge(Deed::Do, "pump", Deed::On, "stand")};
    of("rear").doings = {{.code = "pump", .what = "Pump"}};
    task("both", {"rear", "front"});
    EXPECT_THAT(words(), ElementsAre("-stand", "-rear", "-front", "both", "+front", "+rear", "do pump",
                                     "+stand", "torque pinch", "stop"));
}

TEST_F(OrderTest, AnEdgeIsStrongerThanTheOrderOfTheJobs) {
    task("a", {"rear"});
    task("b", {"front"});
    of("front").edges.push_back(edge(Deed::On, "front", Deed::Off, "rear"));
    const auto said = words();
    const auto at = [&](const char* word) {
        return std::find(said.begin(), said.end(), word) - said.begin();
    };
    EXPECT_LT(at("+front"), at("-rear"));
    EXPECT_LT(at("b"), at("a"));
}

TEST_F(OrderTest, AStopNamesWhatIsNotTorquedYet) {
    task("a", {"front"});
    task("b", {"rear"});
    const auto made = plan({.joints = {{"pinch", "Pinch bolts"}, {"nut", "Axle nut", "by the brake"}}});
    EXPECT_EQ(made->acts[0].text, "Axle nut, held: by the brake");
    const auto stop = std::find_if(made->acts.begin(), made->acts.end(),
                                   [](const Act& act) { return act.kind == ActKind::SafeStop; });
    EXPECT_THAT(stop->text, HasSubstr("Loose, not to be ridden or wheeled: Axle nut, Pinch bolts."));
    EXPECT_THAT(made->acts.back().text, HasSubstr("the machine is whole"));
}

TEST_F(OrderTest, OilThatLiesUnderOtherWorkIsDrainedWarmBeforeAnythingIsOpened) {
    task("pump seal", {"cover", "rear"});
    tasks_[task("oil change", {"oil"})].bodyState = BodyState::Warm;
    tasks_[task("valves", {"front"})].bodyState = BodyState::Cold;
    const auto made = plan({.times = {.toWarm = units::Minutes{5}, .toCold = units::Minutes{100}}});
    EXPECT_THAT(
        actWords(*made),
        ElementsAre("run", "-oil", "oil change", "crack nut", "-stand", "-cover", "-rear", "pump seal",
                    "+rear", "+cover", "stop", "-front", "wait", "valves", "+front", "do pump", "torque nut",
                    "do slack", "torque locks", "+stand", "torque pinch", "+oil", "run", "do level", "stop"));
    EXPECT_EQ(made->waiting.count(), 100 - 15 - 35 - 5) << "what was done since counts";
}

TEST_F(OrderTest, WhatIsDoneBeforeAColdStepWaitsForTheEngineAsWell) {
    of("front").bodyState = BodyState::Cold;
    of("front").doings.push_back({.code = "fuel", .what = "Fuel off", .comes = Comes::Before});
    task("pump seal", {"cover"});
    task("valves", {"front"});
    const auto said = words();
    const auto at = [&](const char* word) {
        return std::find(said.begin(), said.end(), word) - said.begin();
    };
    EXPECT_LT(at("-oil"), at("wait"));
    EXPECT_LT(at("wait"), at("do fuel"));
    EXPECT_LT(at("do fuel"), at("-front"));
}

// It is a job on a warm engine, and yet nothing waits for it with the engine hot.
TEST_F(OrderTest, ALevelThatIsAJobIsLookedAtWhenTheOilIsInAgain) {
    of("front").bodyState = BodyState::Cold;
    task("pump seal", {"cover"});
    task("valves", {"front"});
    tasks_[task("level", {})].bodyState = BodyState::Warm;
    const auto said = words();
    const auto at = [&](const char* word) {
        return std::find(said.begin(), said.end(), word) - said.begin();
    };
    EXPECT_LT(at("-oil"), at("wait"));
    EXPECT_LT(at("wait"), at("-front"));
    EXPECT_LT(at("+oil"), at("level"));
    EXPECT_LT(at("level"), std::ssize(said));
}

TEST_F(OrderTest, OilAloneIsDrainedAfterTheRestIsClosed) {
    tasks_[task("oil change", {"oil"})].bodyState = BodyState::Warm;
    task("tyre", {"front"});
    EXPECT_THAT(words(),
                ElementsAre("-stand", "-front", "tyre", "+front", "do pump", "+stand", "torque pinch", "stop",
                            "run", "-oil", "oil change", "+oil", "run", "do level", "stop"));
}

TEST_F(OrderTest, IsNotRunForALevelWhileTheMachineIsNotWhole) {
    tasks_[task("oil change", {"oil"})].bodyState = BodyState::Any;
    EXPECT_THAT(words({.isElseWhole = false}),
                ElementsAre("run", "-oil", "oil change", "+oil", "do level", "stop"));
    EXPECT_THAT(words(), ElementsAre("run", "-oil", "oil change", "+oil", "run", "do level", "stop"));
}

TEST_F(OrderTest, BleedingIsTheLastOpening) {
    tasks_[task("bleed", {"stand"})].comesLast = true;
    task("tyre", {"rear"});
    task("seat", {"stand"});
    const auto said = words();
    const auto at = [&](const char* word) {
        return std::find(said.begin(), said.end(), word) - said.begin();
    };
    EXPECT_LT(at("-rear"), at("bleed"));
    EXPECT_LT(at("seat"), at("bleed"));
    EXPECT_LT(at("bleed"), at("+stand"));
}

TEST_F(OrderTest, BleedingIsTheLastOpeningOfAllRounds) {
    tasks_[task("bleed", {"stand"})].comesLast = true;
    tasks_[task("wheel away", {"rear"})].sendsOut = true;
    task("tyre", {"front"});
    const auto said = words();
    const auto at = [&](const char* word) {
        return std::find(said.begin(), said.end(), word) - said.begin();
    };
    EXPECT_LT(at("tyre"), at("-rear"));
    EXPECT_LT(at("-rear"), at("bleed"));
}

TEST_F(OrderTest, BleedingThatWaitsForWhatIsAwayIsNotInThePlanAndNamed) {
    const std::size_t bleed = task("bleed", {"stand"});
    tasks_[bleed].comesLast = true;
    tasks_[bleed].edges = {edge(Deed::On, "rear", Deed::Job, "bleed")};
    tasks_[task("wheel away", {"rear"})].sendsOut = true;
    const auto made = plan();
    EXPECT_THAT(actWords(*made), Not(Contains("bleed")));
    EXPECT_THAT(made->acts.back().stop.left, ElementsAre("bleed"));
    EXPECT_THAT(made->acts.back().text, HasSubstr("Not in this plan, for it waits for what is away: bleed."));
}

TEST_F(OrderTest, WhatAStepPutsOnForATorqueStaysOffWithoutIt) {
    steps_.push_back(step("guard", {"stand"}));
    steps_.push_back(step("chain", {"guard"}));
    of("chain").edges = {edge(Deed::Crack, "sprocket", Deed::Off, "chain"),
                         edge(Deed::On, "chain", Deed::Torque, "sprocket"),
                         edge(Deed::On, "rear", Deed::Torque, "sprocket")};
    tasks_[task("chain kit", {"chain", "rear"})].joints = {{"sprocket"}};
    tasks_[task("wheel away", {"rear"})].sendsOut = true;
    const auto made = plan();
    const auto said = actWords(*made);
    EXPECT_THAT(said, Contains("crack sprocket"));
    EXPECT_THAT(said, Not(Contains("torque sprocket")));
    EXPECT_THAT(said, Not(Contains("+chain"))) << "the wheel holds the nut, the chain holds the wheel";
    EXPECT_THAT(said, Not(Contains("+guard"))) << "the chain stands on it";
    EXPECT_THAT(made->acts.back().stop.off, ElementsAre("stand off", "guard off", "chain off", "rear off"));
    tasks_.back().sendsOut = false;
    EXPECT_THAT(words(), Contains("+chain"));
}

TEST_F(OrderTest, ACoverStaysOffOverWhatCouldNotBeTorqued) {
    of("front").edges = {edge(Deed::On, "rear", Deed::Torque, "nut"),
                         edge(Deed::Torque, "nut", Deed::On, "front")};
    task("both", {"front", "rear"});
    tasks_[task("wheel away", {"rear"})].sendsOut = true;
    EXPECT_THAT(words(), Not(Contains("+front")));
}

TEST_F(OrderTest, AJobOfThePlanStandsForTheDoingOfItsCode) {
    of("rear").doings.push_back({.code = "sag", .what = "Note the sag", .comes = Comes::Before});
    of("rear").edges.push_back(edge(Deed::Do, "sag", Deed::Crack, "nut"));
    task("tyre", {"rear"});
    EXPECT_THAT(words(), Contains("do sag"));
    task("sag", {});
    const auto said = words();
    EXPECT_THAT(said, Not(Contains("do sag")));
    EXPECT_EQ(said.front(), "sag") << "bound as the doing is";
}

TEST_F(OrderTest, ATaskThatCracksAJointItselfIsNoLookAtIt) {
    const std::size_t laps = task("laps", {"stand"});
    tasks_[laps].joints = {{"nut"}};
    tasks_[laps].edges = {edge(Deed::Crack, "nut", Deed::Job, "laps"),
                          edge(Deed::Job, "laps", Deed::Torque, "nut")};
    task("tyre", {"rear"});
    const auto said = words();
    const auto at = [&](const char* word) {
        return std::find(said.begin(), said.end(), word) - said.begin();
    };
    EXPECT_LT(at("crack nut"), at("laps"));
    EXPECT_LT(at("laps"), at("torque nut"));
}

TEST_F(OrderTest, ALookComesAfterWhatItLooksAtIsTorqued) {
    tasks_[task("check", {})].joints = {{"nut"}};
    task("tyre", {"rear"});
    const auto made = plan();
    const auto said = actWords(*made);
    EXPECT_EQ(
        std::find(said.begin(), said.end(), "check") > std::find(said.begin(), said.end(), "torque nut"),
        true);
    for (const Act& act : made->acts)
        EXPECT_EQ(act.torques == std::vector<std::string>{"nut"},
                  act.kind == ActKind::Torque && act.joint == "nut");
}

TEST_F(OrderTest, WhatWaitsForWhatIsAwayIsLeftOutAndNamedAsLoose) {
    of("rear").edges.push_back(edge(Deed::On, "rear", Deed::Torque, "pinch"));
    task("tyre", {"front", "rear"});
    tasks_[task("wheel away", {"rear"})].sendsOut = true;
    const auto made = plan();
    const auto said = actWords(*made);
    EXPECT_THAT(said, Not(Contains("torque pinch")));
    EXPECT_THAT(said, Not(Contains("torque nut")));
    EXPECT_THAT(said, Contains("+front"));
    EXPECT_THAT(made->acts.back().text, HasSubstr("Loose, not to be ridden or wheeled: pinch"));
}

TEST_F(OrderTest, ThreadLockerCuresBeforeRidingAndNotBeforeTheNextStep) {
    task("tyre", {"front"});
    const auto made = plan({.joints = {{.code = "pinch", .name = "Pinch bolts", .cures = true}}});
    EXPECT_THAT(made->acts.back().text, HasSubstr("Not ridden before the thread-locker has cured"));
    EXPECT_EQ(made->waiting.count(), 0);
}

TEST_F(OrderTest, ActsThatWaitForEachOtherAreNamed) {
    task("tyre", {"rear"});
    of("rear").edges.push_back(edge(Deed::Torque, "locks", Deed::Do, "pump"));
    const auto made = plan();
    ASSERT_FALSE(made);
    EXPECT_EQ(made.error().fault, Fault::Cycle);
    EXPECT_EQ(made.error().field, base::Place("edges"));
    EXPECT_EQ(made.error().given, "do pump, torque nut, do slack, torque locks, do pump");
    std::vector<const upkeep::TaskVersion*> none;
    EXPECT_EQ(checkOrder(pointersTo(steps_), none).error().fault, Fault::Cycle);
    of("rear").active = false;
    EXPECT_TRUE(checkOrder(pointersTo(steps_), none)) << "what is put away binds nothing";
}

TEST_F(OrderTest, TorqueBeforeItsOwnCrackIsACycle) {
    task("tyre", {"rear"});
    of("rear").edges = {edge(Deed::Torque, "nut", Deed::Crack, "nut")};
    EXPECT_EQ(plan().error().fault, Fault::Cycle);
    EXPECT_THAT(plan().error().given, HasSubstr("torque nut, crack nut"));
}

TEST_F(OrderTest, WhatNamesNothingInThePlanBindsNothing) {
    of("rear").edges = {edge(Deed::Crack, "no nut", Deed::Off, "stand"),
                        edge(Deed::On, "front", Deed::Off, "rear"),
                        edge(Deed::Do, "nothing", Deed::Job, "nobody")};
    task("tyre", {"rear"});
    EXPECT_TRUE(plan());
}

}  // namespace
}  // namespace wm::weekend
