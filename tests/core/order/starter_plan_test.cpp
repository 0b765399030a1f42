// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// How a plan of the program is told as acts, on a small machine made up here.
#include "tests/core/order/starter_plan.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace wm::order {
namespace {

weekend::StepVersion step(const std::string& code, const std::vector<std::string>& needs,
                          const std::vector<std::string>& joints) {
    weekend::StepVersion made;
    made.code = code;
    made.name = code;
    for (const std::string& need : needs)
        made.needs.push_back({need});
    for (const std::string& joint : joints)
        made.joints.push_back({joint});
    return made;
}

upkeep::TaskVersion task(const std::string& code, const std::vector<std::string>& steps,
                         const std::vector<std::string>& joints) {
    upkeep::TaskVersion made;
    made.code = code;
    made.name = code;
    for (const std::string& each : steps)
        made.steps.push_back({each});
    for (const std::string& joint : joints)
        made.joints.push_back({joint});
    return made;
}

exchange::Starter starter() {
    exchange::Starter made;
    made.steps = {step("stand", {}, {}), step("wheel", {"stand"}, {"nut", "locks"}),
                  step("seat", {"stand"}, {}), step("oil", {"stand"}, {"plug"})};
    made.steps[1].breakLoose = "Pinch first, brake held, then the big nut";
    made.steps[1].looseBefore = {{"stand"}};
    made.steps[1].refit = "Adjusters alike; turn it";
    made.steps[1].followUps = {{.what = "Pump it", .when = upkeep::When::AtOnce},
                               {.what = "Spokes again", .when = upkeep::When::NextOuting}};
    made.joints.resize(1);
    made.joints[0].code = "nut";
    made.joints[0].locking = "threadlocker, low";
    made.tasks = {task("tyre", {"wheel"}, {"rim", "nut"}), task("check", {"stand"}, {"nut"}),
                  task("oil change", {"oil"}, {}), task("away", {"wheel"}, {})};
    made.tasks[2].bodyState = upkeep::BodyState::Warm;
    made.tasks[3].sendsOut = true;
    made.tasks[3].position = "rear wheel";
    made.tasks[3].howTo = "Write the tag.";
    return made;
}

const Json& table() {
    static const Json kTable = Json::parse(R"({
        "joints": {"nut": "axle nut"}, "joints_by_their_code": [],
        "locking": {"threadlocker": "apply thread-locker"},
        "steps": {
            "stand": {"off": ["stand up"], "on": ["stand down"]},
            "wheel": {"places": ["wheel", "caliper"],
                      "break_loose": {"big nut": ["crack axle nut"], "pinch": ["crack pinch"]},
                      "break_loose_held": {"brake held": "brake"},
                      "refit_first": {"adjusters": ["set adjusters"]}, "refit_last": {"turn it": ["turn"]}},
            "oil": {"off": ["drain oil"], "on": ["fill oil"]}
        },
        "looks": ["check"],
        "jobs": {"tyre": {"do": ["off tyre", "on tyre"]}, "away": {"how_to": {"tag": ["tag wheel"]}}},
        "jobs_without_a_truth": ["check"],
        "run": ["run engine"], "wait": ["wait"], "held": {"brake": ["brake"]},
        "doings": {"press": ["press it"]},
        "at_once": {"pump": ["pump brake"]}, "later": {"spokes": ["later spokes"]}, "at_once_of_a_job": {}
    })");
    return kTable;
}

class StarterPlanTest : public testing::Test {
  protected:
    [[nodiscard]] Acts of(const std::vector<std::size_t>& tasks) const {
        StarterPlan::Tasks picked;
        for (const std::size_t at : tasks)
            picked.push_back(&plan_.starter().tasks[at]);
        return plan_.actsOf(picked);
    }

    StarterPlan plan_{starter(), table()};
};

TEST_F(StarterPlanTest, TellsAnOpeningFromTheCrackToTheLastTorque) {
    const Acts expected{"hold brake",      "crack pinch",  "crack axle nut", "release brake",
                        "stand up",        "crack locks",  "off wheel",      "off caliper",
                        "crack rim",       "off tyre",     "on tyre",        "torque rim",
                        "on caliper",      "on wheel",     "set adjusters",  "apply thread-locker",
                        "torque axle nut", "torque locks", "turn",           "stand down",
                        "pump brake",      "later spokes"};
    EXPECT_EQ(of({0}), expected);
}

TEST_F(StarterPlanTest, ALookCracksNothing) {
    EXPECT_EQ(of({1}), (Acts{"stand up", "apply thread-locker", "torque axle nut", "stand down"}));
}

TEST_F(StarterPlanTest, TheEngineIsRunBeforeAnythingIsOpenedForAWarmJob) {
    EXPECT_EQ(of({2}), (Acts{"run engine", "stand up", "crack plug", "drain oil", "fill oil", "torque plug",
                             "stand down"}));
}

TEST_F(StarterPlanTest, WhatIsSentOutStaysOff) {
    const Acts acts = of({3});
    EXPECT_EQ(std::count(acts.begin(), acts.end(), "send out rear wheel"), 1);
    EXPECT_EQ(std::count(acts.begin(), acts.end(), "tag wheel"), 1);
    EXPECT_EQ(std::count(acts.begin(), acts.end(), "on wheel"), 0);
    EXPECT_EQ(std::count(acts.begin(), acts.end(), "torque axle nut"), 0);
}

TEST_F(StarterPlanTest, NamesWhatTheTableDoesNotKnow) {
    exchange::Starter other = starter();
    other.joints[0].code = "bolt";
    other.steps[1].breakLoose = "Something else";
    const auto unknown = StarterPlan(other, table()).unbound();
    EXPECT_EQ(unknown, (std::vector<std::string>{"joint bolt", "task oil change",
                                                 "what is cracked at wheel: Something else", "step seat"}));
}

}  // namespace
}  // namespace wm::order
