// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What a mechanic expects to find among the tasks of each starter schedule, and how they bring one another.
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "core/exchange/starter.h"
#include "core/upkeep/unknown.h"
#include "tests/core/exchange/shipped.h"

namespace wm::exchange {
namespace {

using test::codesOf;
using test::kShippedStarters;
using test::shippedStarter;
using test::withCode;
using upkeep::Counter;
using upkeep::Happening;

class StartersTasksTest : public testing::TestWithParam<const char*> {
  protected:
    [[nodiscard]] const upkeep::TaskVersion& task(const std::string& code) const {
        static const upkeep::TaskVersion kNone;
        const auto* found = withCode(starter_.tasks, code);
        EXPECT_NE(found, nullptr) << "no task " << code;
        return found == nullptr ? kNone : *found;
    }
    [[nodiscard]] bool has(const std::string& code) const {
        return withCode(starter_.tasks, code) != nullptr;
    }
    [[nodiscard]] bool isFourStroke() const { return starter_.name.starts_with("four"); }

    // All steps that are off once these are.
    [[nodiscard]] std::set<std::string> opening(const std::vector<base::Code>& wanted) const {
        std::set<std::string> off;
        std::vector<std::string> ahead;
        for (const auto& step : wanted)
            ahead.push_back(step.code);
        while (!ahead.empty()) {
            const std::string code = ahead.back();
            ahead.pop_back();
            if (!off.insert(code).second)
                continue;
            for (const auto& need : withCode(starter_.steps, code)->needs)
                if (need.applies)
                    ahead.push_back(need.code);
        }
        return off;
    }

    const Starter starter_ = shippedStarter(GetParam());
};

INSTANTIATE_TEST_SUITE_P(All, StartersTasksTest, testing::ValuesIn(kShippedStarters), [](const auto& file) {
    std::string name(file.param);
    name.resize(name.find('.'));
    std::erase(name, '-');
    return name;
});

bool counts(const upkeep::TaskVersion& task, Counter counter) {
    return std::any_of(task.limits.begin(), task.limits.end(),
                       [&](const auto& limit) { return limit.counter == counter; });
}

bool comesWith(const upkeep::TaskVersion& task, Happening happening) {
    return std::any_of(task.triggers.begin(), task.triggers.end(),
                       [&](const auto& trigger) { return trigger.happening == happening; });
}

const upkeep::KitLine* kitLine(const upkeep::TaskVersion& task, std::string_view what) {
    const auto found = std::find_if(task.kit.begin(), task.kit.end(),
                                    [&](const auto& line) { return line.what.starts_with(what); });
    return found == task.kit.end() ? nullptr : &*found;
}

TEST_P(StartersTasksTest, EachSaysHowItIsDone) {
    for (const auto& each : starter_.tasks)
        EXPECT_GE(each.howTo.size(), 40U) << each.code;
}

// One code is one job: but for what the machine itself has otherwise, its name is the same everywhere.
TEST_P(StartersTasksTest, NamesAreUniqueAndTheSameForOneCode) {
    const std::set<std::string> ofTheMachine{"walk-round",     "plates-plastics",   "swingarm-grease",
                                             "shock-eyes",     "brake-hoses-check", "coolant-check",
                                             "coolant-change", "compression"};
    const Starter other = shippedStarter("two-stroke-motocross.json");
    std::set<std::string> names;
    for (const auto& each : starter_.tasks) {
        EXPECT_TRUE(names.insert(each.name).second) << each.name;
        const auto* twin = withCode(other.tasks, each.code);
        EXPECT_TRUE(twin == nullptr || twin->name == each.name || ofTheMachine.contains(each.code))
            << each.code;
    }
}

TEST_P(StartersTasksTest, EachHasAShortNameForNarrowPlaces) {
    std::map<std::string, std::string> code;
    for (const auto& each : starter_.tasks) {
        EXPECT_FALSE(each.shortName.empty()) << each.code;
        EXPECT_LE(each.shortName.size(), upkeep::kLongestShortName) << each.code;
        EXPECT_TRUE(code.emplace(each.shortName, each.code).second)
            << each.code << " is called as " << code[each.shortName];
    }
}

TEST_P(StartersTasksTest, IsFeltForBeforeARaceInLinesOfItsOwn) {
    for (const char* code :
         {"front-wheel-play", "rear-wheel-play", "steering-check", "swingarm-play", "linkage-play",
          "throttle-check", "bar-clamps-check", "front-spokes-check", "rear-spokes-check", "rim-locks",
          "silencer-check", "sound-check", "air-fork-pressure"}) {
        EXPECT_TRUE(comesWith(task(code), Happening::BeforeRace)) << code;
        EXPECT_TRUE(task(code).active || std::string_view(code).starts_with("air-fork")) << code;
    }
}

// New machines come with little grease; after that mud and washes bring it on as hours do.
TEST_P(StartersTasksTest, BearingsComeByFirstIntervalMudAndWashes) {
    for (const char* code : {"swingarm-grease", "steering-grease", "linkage-grease"}) {
        const auto& limits = task(code).limits;
        for (const Counter counter : {Counter::Hours, Counter::Washes})
            EXPECT_TRUE(std::any_of(limits.begin(), limits.end(), [&](const auto& limit) {
                return limit.counter == counter && limit.first && *limit.first < limit.every;
            })) << code;
        EXPECT_TRUE(counts(task(code), Counter::MudDays)) << code;
    }
    for (const char* code :
         {"shock-eyes", "front-wheel-bearings", "rear-wheel-bearings", "throttle", "clutch-cable"}) {
        if (!has(code))
            continue;
        EXPECT_TRUE(counts(task(code), Counter::Washes)) << code;
        EXPECT_TRUE(counts(task(code), Counter::MudDays)) << code;
    }
    for (const char* code : {"swingarm-grease", "linkage-grease"})
        EXPECT_NE(task(code).howTo.find("count them"), std::string::npos) << code << ": needles drop out";
}

// A look says that it is due; no hours do.
TEST_P(StartersTasksTest, WhatComesByConditionHasNoIntervalAndALookThatLeadsToIt) {
    std::vector<std::string> jobs{
        "chain-kit",        "front-pads",      "rear-pads",        "clutch-pack",     "clutch-basket-renew",
        "front-disc-renew", "rear-disc-renew", "front-wheel-true", "rear-wheel-true", "front-nipples",
        "rear-nipples",     "front-relace",    "rear-relace"};
    if (isFourStroke())
        jobs.emplace_back("valve-shims");
    for (const std::string& code : jobs) {
        EXPECT_TRUE(task(code).limits.empty()) << code;
        EXPECT_EQ(task(code).howTo.find("Due when"), 0U) << code << ": and says so";
        bool isLedTo = false;
        for (const auto& look : starter_.tasks)
            for (const auto& point : look.measures)
                isLedTo = isLedTo || (look.active && look.code != code && point.job == code);
        EXPECT_TRUE(isLedTo) << code;
    }
}

TEST_P(StartersTasksTest, AMeasureInUseLeadsToAJobInUse) {
    for (const auto& look : starter_.tasks)
        for (const auto& point : look.measures)
            if (look.active && !point.job.empty()) {
                EXPECT_TRUE(task(point.job).active) << look.code << " -> " << point.job;
            }
}

TEST_P(StartersTasksTest, ALookOpensNoNutAndNeedsNoNewOne) {
    for (const char* code : {"frame-check", "clutch-basket", "front-disc", "rear-disc", "linkage-play",
                             "swingarm-play", "front-wheel-play", "rear-wheel-play", "shock-check",
                             "fork-check", "silencer-check", "crash-set", "front-rim-hub", "rear-rim-hub"}) {
        EXPECT_TRUE(task(code).joints.empty()) << code;
        EXPECT_TRUE(upkeep::isALook(task(code))) << code;
    }
}

TEST_P(StartersTasksTest, SpokesAreLookedAtAgainAfterTheFirstMinutes) {
    for (const std::string wheel : {"front", "rear"}) {
        const auto& spokes = task(wheel + "-spokes-check");
        EXPECT_TRUE(std::any_of(spokes.limits.begin(), spokes.limits.end(), [](const auto& limit) {
            return limit.counter == Counter::Hours && limit.first && *limit.first <= 50;
        })) << "a new machine's wheels settle in the first half hour";
        for (const std::string& job : {wheel + "-relace", wheel + "-nipples", wheel + "-wheel-true"}) {
            const auto& rules = task(job).followUps;
            EXPECT_TRUE(std::any_of(rules.begin(), rules.end(), [&](const auto& rule) {
                return rule.when == upkeep::When::AfterHours && rule.amount == 25 &&
                       rule.code == wheel + "-spokes-check";
            })) << job;
        }
        EXPECT_TRUE(std::any_of(task(wheel + "-relace").followUps.begin(),
                                task(wheel + "-relace").followUps.end(),
                                [](const auto& rule) { return rule.when == upkeep::When::NextOuting; }));
        const auto* tube = kitLine(task(wheel + "-tyre"), wheel + " tube");
        ASSERT_NE(tube, nullptr);
        EXPECT_TRUE(tube->onlyIfNeeded) << "with every second tyre";
        EXPECT_EQ(task(wheel + "-tyre").everyNth, 2);
    }
}

// Fluids that an opening lets out are in the kit, with the washer of their bolt.
TEST_P(StartersTasksTest, KitsBringWhatTheOpeningDrains) {
    const char* oil = isFourStroke() ? "engine oil" : "gearbox oil";
    for (const auto& each : starter_.tasks) {
        // Done in the same opening as the job that drains it.
        if (!each.nthOf.empty())
            continue;
        const auto off = opening(each.steps);
        for (const auto& [step, fluid, washer] :
             {std::tuple("coolant-drained", "coolant", "coolant drain washer"),
              std::tuple("oil-drained", oil, "oil drain washer")})
            if (off.contains(step)) {
                EXPECT_NE(kitLine(each, fluid), nullptr) << each.code;
                EXPECT_NE(kitLine(each, washer), nullptr) << each.code;
            }
    }
    for (const char* code : {"piston-kit", "valve-train", "bottom-end"})
        if (isFourStroke()) {
            EXPECT_NE(kitLine(task(code), "engine oil"), nullptr) << code;
            EXPECT_NE(kitLine(task(code), "oil filter"), nullptr) << code;
        }
    EXPECT_EQ(kitLine(task("piston-kit"), "circlip")->amount, 2);
}

// What a kit brings is not asked for a second time by the joint that it belongs to.
TEST_P(StartersTasksTest, NoPartStandsInAKitAndAtItsJoint) {
    const std::map<std::string, std::string> part{{"oil-drain-bolt", "oil drain washer"},
                                                  {"coolant-drain-bolt", "coolant drain washer"},
                                                  {"front-pad-pin", "pad pin clip"},
                                                  {"rear-pad-pin", "pad pin clip"},
                                                  {"peg-pins", "peg cotter"},
                                                  {"front-banjo-bolts", "banjo washer"},
                                                  {"rear-banjo-bolts", "banjo washer"},
                                                  {"primary-cover-bolts", "primary cover gasket"},
                                                  {"oil-filter-bolts", "oil filter cover ring"},
                                                  {"oil-screen-plug", "oil screen ring"},
                                                  {"fuel-pump-screws", "fuel pump ring"},
                                                  {"front-disc-bolts", "front disc bolt"},
                                                  {"rear-disc-bolts", "rear disc bolt"},
                                                  {"reed-block-bolts", "reed block gasket"},
                                                  {"power-valve-bolts", "power valve gasket"},
                                                  {"base-nuts", "base gasket"},
                                                  {"head-nuts", "head gasket"},
                                                  {"tensioner-bolts", "tensioner gasket"},
                                                  {"valve-cover-bolts", "valve cover gasket"},
                                                  {"front-sprocket-nut", "front sprocket lock washer"}};
    for (const auto& joint : starter_.joints) {
        const auto at = part.find(joint.code);
        if (joint.renew.empty() || at == part.end())
            continue;
        for (const auto& each : starter_.tasks)
            EXPECT_EQ(kitLine(each, at->second), nullptr) << each.code << ": " << joint.code;
    }
}

TEST_P(StartersTasksTest, TheEngineIsJudgedByWhatTellsOfIt) {
    if (isFourStroke()) {
        EXPECT_EQ(task("compression").measures.size(), 1U);
        EXPECT_EQ(task("compression").measures[0].name, "leak-down")
            << "an automatic decompressor makes cranking pressure meaningless";
        EXPECT_FALSE(task("decompressor-cable").active);
        return;
    }
    EXPECT_TRUE(counts(task("piston-kit"), Counter::Hours)) << "the piston goes by hours too";
    for (const char* job : {"piston-kit", "bottom-end"})
        EXPECT_TRUE(std::any_of(task("leak-test").triggers.begin(), task("leak-test").triggers.end(),
                                [&](const auto& trigger) { return trigger.code == job; }))
            << job;
    EXPECT_TRUE(task("premix").active);
    EXPECT_NE(task("premix").howTo.find("four weeks"), std::string::npos);
}

TEST_P(StartersTasksTest, MudNoiseAndACrashBringWhatTheyMust) {
    EXPECT_TRUE(comesWith(task("radiator-fins"), Happening::MudDay));
    EXPECT_TRUE(comesWith(task("wash"), Happening::MudDay));
    for (const char* part : {"bearings", "seals", "airbox", "wires", "silencer", "Blown dry", "chain lubed"})
        EXPECT_NE(task("wash").howTo.find(part), std::string::npos) << part;
    EXPECT_EQ(task("sound-check").measures.at(0).job, "silencer-packing");
    EXPECT_TRUE(counts(task("silencer-packing"), Counter::Hours));
    EXPECT_TRUE(comesWith(task("crash-set"), Happening::Crash));
    for (const char* part : {"bars", "clamps", "axle", "tubes", "hoses", "levers", "radiators", "subframe"})
        EXPECT_NE(task("crash-set").howTo.find(part), std::string::npos) << part;
}

// Of the two kinds of clutch and fork the commoner one is in use.
TEST_P(StartersTasksTest, WhatOnlySomeHaveIsPutOutOfUse) {
    const auto& cable = task("clutch-cable");
    EXPECT_NE(cable.active, task("clutch-fluid").active);
    EXPECT_EQ(cable.active, !isFourStroke());
    EXPECT_FALSE(task("air-fork-pressure").active);
    EXPECT_FALSE(task("air-fork-seals").active);
    for (const char* code : {"fork-oil", "fork-service", "air-fork-seals"})
        EXPECT_NE(task(code).howTo.find("all pressure out"), std::string::npos) << code;
}

}  // namespace
}  // namespace wm::exchange
