// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What has to come off, and how long that takes, in the starter schedules that come with the program.
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>

#include "core/exchange/starter.h"
#include "core/fastening/inside.h"
#include "core/weekend/step_words.h"
#include "tests/core/exchange/shipped.h"

namespace wm::exchange {
namespace {

using test::kShippedStarters;
using test::shippedStarter;
using test::withCode;

// The access graph against a table of cumulative minutes (off and on, nothing else open), with the needs that
// differ between models counted and left out. Source: common practice, from memory; the sums were worked out
// apart from these files.
struct Access {
    std::string step;
    std::int64_t withAll;
    std::int64_t without;
};

std::int64_t minutesToReach(const Starter& starter, const std::string& goal, bool someModels) {
    std::set<std::string> off;
    std::vector<std::string> ahead{goal};
    std::int64_t minutes = 0;
    while (!ahead.empty()) {
        const std::string code = ahead.back();
        ahead.pop_back();
        if (!off.insert(code).second)
            continue;
        const auto step = std::find_if(starter.steps.begin(), starter.steps.end(),
                                       [&](const auto& each) { return each.code == code; });
        if (step == starter.steps.end()) {
            ADD_FAILURE() << "no access step " << code;
            return -1;
        }
        minutes += step->off.count() + step->on.count();
        for (const auto& need : step->needs)
            if (!need.onlySomeModels || someModels)
                ahead.push_back(need.code);
    }
    return minutes;
}

const std::vector<Access> kChassis{{"on-stand", 5, 5},
                                   {"seat-off", 8, 8},
                                   {"side-panels-off", 10, 10},
                                   {"air-filter-out", 14, 14},
                                   {"tank-off", 22, 22},
                                   {"silencer-off", 19, 19},
                                   {"header-off", 34, 34},
                                   {"subframe-off", 46, 46},
                                   {"intake-off", 81, 43},
                                   {"front-wheel-out", 16, 16},
                                   {"front-caliper-off", 13, 13},
                                   {"fork-legs-out", 40, 40},
                                   {"bars-forward", 18, 18},
                                   {"top-clamp-off", 61, 61},
                                   {"stem-down", 77, 77},
                                   {"rear-wheel-out", 16, 16},
                                   {"chain-off", 12, 12},
                                   {"linkage-off", 40, 40},
                                   {"shock-out", 101, 60},
                                   {"swingarm-off", 77, 77},
                                   {"coolant-drained", 19, 19},
                                   {"radiators-off", 56, 56},
                                   {"oil-drained", 9, 9},
                                   {"clutch-cover-off", 15, 15},
                                   {"clutch-pack-out", 28, 28},
                                   {"primary-cover-off", 70, 70},
                                   {"ignition-cover-off", 17, 17},
                                   {"engine-out", 226, 202}};
const std::vector<Access> kTwoStroke{
    {"head-off", 60, 43}, {"cylinder-off", 166, 104}, {"piston-out", 178, 116}};
const std::vector<Access> kFourStroke{{"valve-cover-off", 43, 43}, {"tensioner-out", 65, 65},
                                      {"cams-out", 89, 89},        {"head-off", 219, 195},
                                      {"cylinder-off", 251, 227},  {"piston-out", 263, 239}};

class MotocrossAccessTest : public testing::TestWithParam<std::string> {
  protected:
    const Starter starter_ = shippedStarter(GetParam());
};

INSTANTIATE_TEST_SUITE_P(Both, MotocrossAccessTest,
                         testing::Values("two-stroke-motocross.json", "four-stroke-motocross.json"),
                         [](const auto& file) { return file.param.substr(0, file.param.find('-')); });

TEST_P(MotocrossAccessTest, AccessAddsUpToTheTradesTable) {
    std::vector<Access> table = kChassis;
    const auto& engine = starter_.name.starts_with("two") ? kTwoStroke : kFourStroke;
    table.insert(table.end(), engine.begin(), engine.end());
    EXPECT_EQ(table.size(), starter_.steps.size());
    for (const Access& row : table) {
        EXPECT_EQ(minutesToReach(starter_, row.step, true), row.withAll) << row.step;
        EXPECT_EQ(minutesToReach(starter_, row.step, false), row.without) << row.step;
    }
}

TEST(StartersAccessTest, EveryTaskCanBeReached) {
    for (const char* file : kShippedStarters) {
        const Starter starter = shippedStarter(file);
        for (const auto& task : starter.tasks)
            for (const auto& step : task.steps)
                EXPECT_GE(minutesToReach(starter, step.code, true), 5) << file << ' ' << task.code;
        for (const auto& step : starter.steps) {
            EXPECT_EQ(step.looseBefore.empty() || !step.breakLoose.empty(), true) << file << ' ' << step.code;
            EXPECT_GT(step.off.count(), 0) << file << ' ' << step.code;
        }
    }
}

// Lamps, wires and guards come off first on a road-registered machine; a small one opens sooner. The filter
// of an enduro sits behind a door of its own.
// How each step reads on paper: as it comes off, and as it goes back on.
const std::map<std::string, std::string> kStepWords{
    {"Air filter out, intake plugged", "Refit: Air filter"},
    {"Bars and controls laid forward", "Refit: Bars and controls"},
    {"Cam chain tensioner out", "Refit: Cam chain tensioner"},
    {"Cams and cam chain off", "Refit: Cams and cam chain"},
    {"Carburettor off", "Refit: Carburettor"},
    {"Chain and sprocket guards off", "Refit: Chain and sprocket guards"},
    {"Chain off, sprocket guard off", "Refit: Chain, sprocket guard"},
    {"Clean, photographed, on the stand, secured", "Off the stand"},
    {"Clean, photographed, on the stand, secured, child elsewhere", "Off the stand"},
    {"Clutch cover off", "Refit: Clutch cover"},
    {"Clutch plates and springs out", "Refit: Clutch plates and springs"},
    {"Coolant drained; filled and bled on refit", "Fill: Coolant"},
    {"Cylinder head off", "Refit: Cylinder head"},
    {"Cylinder off", "Refit: Cylinder"},
    {"Engine out of the frame", "Refit: Engine"},
    {"Expansion chamber off", "Refit: Expansion chamber"},
    {"Fork legs out", "Refit: Fork legs"},
    {"Front caliper and fork guards off", "Refit: Front caliper and fork guards"},
    {"Front caliper off", "Refit: Front caliper"},
    {"Front wheel out", "Refit: Front wheel"},
    {"Header off", "Refit: Header"},
    {"Headlamp mask off", "Refit: Headlamp mask"},
    {"Ignition cover off", "Refit: Ignition cover"},
    {"Linkage off", "Refit: Linkage"},
    {"Linkage off, where there is one", "Refit: Linkage"},
    {"Oil drained, machine upright; filled on refit", "Fill: Oil"},
    {"Piston off", "Refit: Piston"},
    {"Primary cover off", "Refit: Primary cover"},
    {"Radiators off", "Refit: Radiators"},
    {"Rear wheel out, caliper hanger free", "Refit: Rear wheel, caliper hanger"},
    {"Seat off", "Refit: Seat"},
    {"Shock out", "Refit: Shock"},
    {"Side panels and number plates off", "Refit: Side panels and number plates"},
    {"Side panels off", "Refit: Side panels"},
    {"Silencer off", "Refit: Silencer"},
    {"Stem down", "Refit: Stem"},
    {"Subframe with airbox off", "Refit: Subframe with airbox"},
    {"Sump guard off", "Refit: Sump guard"},
    {"Swingarm off", "Refit: Swingarm"},
    {"Tank and shrouds off", "Refit: Tank and shrouds"},
    {"Throttle body off", "Refit: Throttle body"},
    {"Top clamp off", "Refit: Top clamp"},
    {"Valve cover off", "Refit: Valve cover"}};

TEST(StartersAccessTest, EveryStepReadsWellOffAndOn) {
    std::map<std::string, std::string> words;
    for (const char* file : kShippedStarters)
        for (const auto& step : shippedStarter(file).steps)
            words[step.name] = base::said(weekend::refitPhrase(step.name));
    EXPECT_EQ(words, kStepWords);
}

TEST(StartersAccessTest, ARoadMachineTakesLongerAndASmallOneLess) {
    const Starter four = shippedStarter("four-stroke-motocross.json");
    const Starter enduro = shippedStarter("four-stroke-enduro.json");
    for (const auto& step : four.steps) {
        ASSERT_NE(withCode(enduro.steps, step.code), nullptr) << step.code;
        EXPECT_GE(minutesToReach(enduro, step.code, true),
                  minutesToReach(four, step.code, true) - (step.code == "air-filter-out" ? 3 : 0))
            << step.code;
    }
    EXPECT_GT(minutesToReach(enduro, "fork-legs-out", false), minutesToReach(four, "fork-legs-out", false));
    EXPECT_GT(minutesToReach(enduro, "subframe-off", false), minutesToReach(four, "subframe-off", false));
    const Starter two = shippedStarter("two-stroke-motocross.json");
    const Starter youth = shippedStarter("small-wheel-youth.json");
    for (const auto& step : two.steps) {
        ASSERT_NE(withCode(youth.steps, step.code), nullptr) << step.code;
        EXPECT_LE(minutesToReach(youth, step.code, true), minutesToReach(two, step.code, true)) << step.code;
        EXPECT_LE(minutesToReach(youth, step.code, false), minutesToReach(two, step.code, false))
            << step.code;
    }
}

// A file from before a joint said where it sits knows it by its code: as the starters say it. That table
// stays as it was; a joint that came later says it itself.
TEST(StartersAccessTest, SaysOfEachJointWhereItSits) {
    std::map<std::string, std::string, std::less<>> known;
    for (const fastening::SitsIn& each : fastening::sitsInByCode())
        EXPECT_TRUE(known.emplace(each.joint, each.position).second) << each.joint;
    std::set<std::string> later;
    for (const char* file : kShippedStarters)
        for (const auto& joint : shippedStarter(file).joints) {
            const auto at = known.find(joint.code);
            ASSERT_TRUE(joint.position) << file << ": " << joint.code;
            if (at == known.end())
                later.insert(joint.code);
            else
                EXPECT_EQ(*joint.position, at->second) << file << ": " << joint.code;
        }
    EXPECT_EQ(later, (std::set<std::string>{"end-cap-bolts", "stem-ring-seat", "throttle-housing-bolts"}));
}

// What goes off with a wheel or an engine is undone by the step, so it is no part of what goes.
TEST(StartersAccessTest, WhatHoldsAnItemSitsNotInsideIt) {
    for (const char* file : kShippedStarters) {
        const Starter starter = shippedStarter(file);
        for (const auto& step : starter.steps)
            for (const auto& freed : step.frees)
                for (const auto& opened : step.joints)
                    EXPECT_NE(withCode(starter.joints, opened.code)->position, freed.code)
                        << file << ": " << step.code;
    }
}

}  // namespace
}  // namespace wm::exchange
