// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The starter schedules that come with the program, read as a user's file would be: all are held to the same.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "core/exchange/starter.h"
#include "core/fastening/generic.h"
#include "tests/core/exchange/schema_check.h"
#include "tests/core/exchange/shipped.h"
#include "tests/repository.h"

namespace wm::exchange {
namespace {

using test::codesOf;
using test::kShippedStarters;
using test::shippedStarter;
using test::shippedText;
using test::withCode;
using upkeep::Hazard;

// What a task asks of the hands, told by its kit or its code, and the hazards that must then stand on it.
struct Danger {
    const char* what;
    bool (*is)(const upkeep::TaskVersion& task);
    Hazard hazard;
};

bool uses(const upkeep::TaskVersion& task, std::string_view what, std::int64_t least = 1) {
    return std::any_of(task.kit.begin(), task.kit.end(), [&](const upkeep::KitLine& line) {
        return line.what.find(what) != std::string::npos && line.amount >= least;
    });
}

bool isOneOf(const upkeep::TaskVersion& task, const std::set<std::string_view>& codes) {
    return codes.contains(task.code);
}

// What is poured out has to go somewhere: topping up is less than this.
constexpr std::int64_t kDrained = 300;

const std::vector<Danger> kDangers{
    {"brake fluid", [](const auto& task) { return uses(task, "brake fluid"); }, Hazard::BrakeFluid},
    {"brake fluid", [](const auto& task) { return uses(task, "brake fluid"); }, Hazard::Brakes},
    {"caliper opened", [](const auto& task) { return task.code.ends_with("-caliper"); }, Hazard::BrakeFluid},
    {"brakes",
     [](const auto& task) {
         return task.code.ends_with("-pads") || task.code.ends_with("-disc") ||
                task.code.ends_with("-drum") || task.code.starts_with("brake");
     },
     Hazard::Brakes},
    {"dust of shoes", [](const auto& task) { return uses(task, "brake shoe"); }, Hazard::Fibre},
    {"packing", [](const auto& task) { return uses(task, "packing kit"); }, Hazard::Fibre},
    {"wheels and tyres",
     [](const auto& task) {
         return task.position.find("wheel") != std::string::npos && !task.code.ends_with("-disc");
     },
     Hazard::Wheels},
    {"steering", [](const auto& task) { return task.code.starts_with("steering"); }, Hazard::Steering},
    {"bars",
     [](const auto& task) {
         return isOneOf(task, {"bars-check", "bar-clamps-check", "crash-set", "grips", "hand-guards",
                               "throttle", "throttle-check"});
     },
     Hazard::Steering},
    // Sag is measured with the shock where it sits: a caution of gas there is noise that hides the others.
    {"shock", [](const auto& task) { return task.position == "shock" && task.code != "sag-set"; },
     Hazard::GasCharged},
    {"springs under load",
     [](const auto& task) {
         return uses(task, "clutch spring") || uses(task, "valve spring") || uses(task, "kick spring") ||
                uses(task, "stand spring") || uses(task, "clutch shoe");
     },
     Hazard::Spring},
    {"fork opened", [](const auto& task) { return uses(task, "fork oil"); }, Hazard::Spring},
    {"fork opened", [](const auto& task) { return uses(task, "fork oil"); }, Hazard::GasCharged},
    {"air fork", [](const auto& task) { return task.code.starts_with("air-fork"); }, Hazard::GasCharged},
    {"cams out",
     [](const auto& task) {
         return isOneOf(task, {"cam-chain", "valve-shims"});
     },
     Hazard::Pinch},
    {"cams out",
     [](const auto& task) {
         return isOneOf(task, {"cam-chain", "valve-shims"});
     },
     Hazard::Spring},
    {"head off", [](const auto& task) { return task.code == "valve-train"; }, Hazard::HotParts},
    {"reeds", [](const auto& task) { return task.code == "reeds"; }, Hazard::Fuel},
    {"rear brake line", [](const auto& task) { return task.code == "swingarm-grease"; }, Hazard::Brakes},
    {"pistons pushed back", [](const auto& task) { return task.code.ends_with("-pads"); },
     Hazard::BrakeFluid},
    {"water at wires", [](const auto& task) { return task.code == "wash"; }, Hazard::Electrical},
    {"circlips", [](const auto& task) { return uses(task, "circlip") && uses(task, "piston"); },
     Hazard::Spring},
    {"fuel open",
     [](const auto& task) {
         return isOneOf(task, {"carburettor", "throttle-body", "fuel-filter", "tank-vent", "premix"});
     },
     Hazard::Fuel},
    {"oil drained",
     [](const auto& task) {
         return uses(task, "engine oil", kDrained) || uses(task, "gearbox oil", kDrained) ||
                uses(task, "fork oil", kDrained) || uses(task, "coolant", kDrained);
     },
     Hazard::UsedFluids},
    {"cooling opened", [](const auto& task) { return uses(task, "coolant"); }, Hazard::HotParts},
    {"exhaust", [](const auto& task) { return task.code.starts_with("exhaust"); }, Hazard::HotParts},
    {"exhaust", [](const auto& task) { return task.position == "silencer"; }, Hazard::HotParts},
    {"engine runs",
     [](const auto& task) {
         return isOneOf(task, {"stop-switch", "hour-meter", "run-in", "kill-lanyard", "radiator-fan",
                               "idle-creep", "sound-check"});
     },
     Hazard::Exhaust},
    {"electrical",
     [](const auto& task) {
         return isOneOf(task, {"battery", "loom", "rotor", "spark-plug", "electric-start", "lights",
                               "headlamp-aim", "horn-switches", "radiator-fan"});
     },
     Hazard::Electrical},
    {"chain",
     [](const auto& task) {
         return isOneOf(task, {"chain-care", "chain-kit", "front-sprocket", "chain-guard"});
     },
     Hazard::Pinch},
    {"air under pressure",
     [](const auto& task) {
         return task.tools.find("leak tester") != std::string::npos ||
                task.tools.find("test pump") != std::string::npos;
     },
     Hazard::CompressedAir},
    {"heavy",
     [](const auto& task) {
         return isOneOf(task,
                        {"bottom-end", "frame-bare", "steering-grease", "swingarm-grease", "linkage-grease"});
     },
     Hazard::Lifting}};

// Joints that a generic torque may be offered for; all others hold wheel, brake, steering, drive, frame or
// head.
const std::set<std::string> kGenericMayServe{"base-nuts",
                                             "battery-terminals",
                                             "cam-cap-bolts",
                                             "cam-sprocket-bolts",
                                             "chain-guard-bolts",
                                             "chain-guide-bolts",
                                             "chain-slider-screws",
                                             "clutch-cover-bolts",
                                             "clutch-hub-nut",
                                             "clutch-shoe-nut",
                                             "clutch-spring-bolts",
                                             "coolant-drain-bolt",
                                             "crankcase-bolts",
                                             "cylinder-bolts",
                                             "end-cap-bolts",
                                             "fan-screws",
                                             "fuel-pump-screws",
                                             "header-nuts",
                                             "headlamp-screws",
                                             "hose-clamps",
                                             "ignition-cover-bolts",
                                             "indicator-nuts",
                                             "intake-clamps",
                                             "kick-lever-bolt",
                                             "mirror-nuts",
                                             "oil-drain-bolt",
                                             "oil-filter-bolts",
                                             "oil-screen-plug",
                                             "panel-bolts",
                                             "plate-bracket-bolts",
                                             "power-valve-bolts",
                                             "primary-cover-bolts",
                                             "primary-nut",
                                             "reed-block-bolts",
                                             "rotor-nut",
                                             "seat-bolts",
                                             "shift-lever-bolt",
                                             "spark-arrestor-screws",
                                             "spark-plug",
                                             "speed-sensor-screw",
                                             "starter-bolts",
                                             "subframe-bolts",
                                             "sump-guard-bolts",
                                             "tank-bolts",
                                             "tensioner-bolts",
                                             "throttle-stop-screw",
                                             "valve-cover-bolts"};

class StartersTest : public testing::TestWithParam<const char*> {
  protected:
    const Starter starter_ = shippedStarter(GetParam());
};

std::string nameOfFile(const testing::TestParamInfo<const char*>& file) {
    std::string name(file.param);
    name.resize(name.find('.'));
    std::erase(name, '-');
    return name;
}

INSTANTIATE_TEST_SUITE_P(All, StartersTest, testing::ValuesIn(kShippedStarters), nameOfFile);

TEST_P(StartersTest, IsASeasonsWorthOfUpkeep) {
    EXPECT_GE(
        std::count_if(starter_.tasks.begin(), starter_.tasks.end(), [](const auto& t) { return t.active; }),
        60);
    EXPECT_GE(starter_.joints.size(), 50U);
    EXPECT_FALSE(starter_.about.empty());
    std::map<upkeep::Consequence, int> byClass;
    for (const auto& task : starter_.tasks)
        ++byClass[task.consequence];
    EXPECT_EQ(byClass.size(), 5U) << "every class of consequence is there";
}

TEST_P(StartersTest, CarriesNoTorqueAndNothingConfirmed) {
    for (const char* key : {"\"torque\"", "\"torque_"})  // "torque front-axle-nut" is an act, no figure
        EXPECT_EQ(shippedText(GetParam()).find(key), std::string::npos) << key;
    EXPECT_EQ(shippedText(GetParam()).find("\"confirmed"), std::string::npos);
    for (const auto& joint : starter_.joints) {
        EXPECT_FALSE(joint.torque || joint.torqueHigh) << joint.code;
        EXPECT_EQ(joint.stages, "") << joint.code << ": stages are figures of the manual";
        EXPECT_EQ(joint.thread, "") << joint.code << ": threads differ between models";
        EXPECT_FALSE(joint.confirmed) << joint.code;
        EXPECT_EQ(joint.source, "common practice") << joint.code;
    }
    for (const auto& step : starter_.steps) {
        EXPECT_FALSE(step.confirmed) << step.code;
        EXPECT_EQ(step.source, "common practice") << step.code;
    }
    for (const auto& task : starter_.tasks) {
        EXPECT_FALSE(task.confirmed) << task.code;
        // Papers have no common practice: how often is for the place where it is ridden.
        EXPECT_EQ(task.source, task.code == "road-inspection" ? "local rules" : "common practice")
            << task.code;
        for (const auto& measure : task.measures) {
            EXPECT_FALSE(measure.least || measure.most) << task.code << ": " << measure.name;
            EXPECT_FALSE(measure.name.empty() || measure.unit.empty()) << task.code;
        }
    }
}

// By use, by what happens, with another job, or by what a look in use measures.
TEST_P(StartersTest, EveryTaskComesRound) {
    const auto comesByItself = [](const upkeep::TaskVersion& task) {
        return !task.limits.empty() || !task.triggers.empty() || !task.nthOf.empty();
    };
    const auto isMeasuredFor = [&](const std::string& code) {
        return std::any_of(starter_.tasks.begin(), starter_.tasks.end(), [&](const auto& look) {
            return look.active && look.code != code && comesByItself(look) &&
                   std::any_of(look.measures.begin(), look.measures.end(),
                               [&](const auto& point) { return point.job == code; });
        });
    };
    for (const auto& task : starter_.tasks) {
        EXPECT_TRUE(comesByItself(task) || isMeasuredFor(task.code)) << task.code;
        EXPECT_TRUE(task.limits.empty() || task.nthOf.empty()) << task.code << ": one rule or the other";
        EXPECT_GT(task.minutes.count(), 0) << task.code;
    }
}

TEST_P(StartersTest, SafetyCarriesItsCaution) {
    for (const auto& task : starter_.tasks) {
        if (!upkeep::isSafety(task.consequence) && task.code != "shock-service")
            continue;
        EXPECT_TRUE(!task.cautions.empty() || !task.followUps.empty()) << task.code;
    }
    const auto hazardsOf = [&](std::string_view code) {
        std::set<upkeep::Hazard> hazards;
        for (const auto& task : starter_.tasks)
            if (task.code == code)
                for (const auto& caution : task.cautions)
                    hazards.insert(caution.hazard);
        return hazards;
    };
    EXPECT_TRUE(hazardsOf("shock-service").contains(upkeep::Hazard::GasCharged));
    EXPECT_TRUE(hazardsOf("front-brake-fluid").contains(upkeep::Hazard::BrakeFluid));
    EXPECT_TRUE(hazardsOf("silencer-packing").contains(upkeep::Hazard::Fibre));
}

TEST_P(StartersTest, JointsThatHoldLifeAreNamedAsSuch) {
    const std::map<std::string, fastening::JointKind> kinds{
        {"rear-axle-nut", fastening::JointKind::Axle},
        {"front-axle-pinch-free", fastening::JointKind::Pinch},
        {"front-caliper-bolts", fastening::JointKind::Brake},
        {"stem-nut", fastening::JointKind::Steering},
        {"swingarm-pivot-nut", fastening::JointKind::Swingarm},
        {"peg-pins", fastening::JointKind::Peg},
        {"rear-spokes", fastening::JointKind::Spoke},
        {"rear-sprocket-bolts", fastening::JointKind::Sprocket},
        {"shock-lower-bolt", fastening::JointKind::Shock},
        {"engine-mount-bolts", fastening::JointKind::EngineMount}};
    for (const auto& joint : starter_.joints) {
        if (const auto kind = kinds.find(joint.code); kind != kinds.end()) {
            EXPECT_EQ(joint.kind, kind->second) << joint.code;
        }
        EXPECT_EQ(joint.sequence == fastening::Sequence::EveryNth, joint.sequenceStep > 0) << joint.code;
        if (joint.sequence == fastening::Sequence::Listed) {
            EXPECT_FALSE(joint.sequenceNote.empty()) << joint.code;
        }
    }
    for (const auto& [code, kind] : kinds)
        EXPECT_TRUE(codesOf(starter_.joints).contains(code)) << code;
}

TEST_P(StartersTest, EveryJointIsOpenedBySomething) {
    std::set<std::string> opened;
    for (const auto& step : starter_.steps)
        for (const auto& joint : step.joints)
            opened.insert(joint.code);
    for (const auto& task : starter_.tasks)
        for (const auto& joint : task.joints)
            opened.insert(joint.code);
    EXPECT_EQ(opened, codesOf(starter_.joints));
}

TEST_P(StartersTest, KitsCountBothSides) {
    const auto amountOf = [&](std::string_view code, std::string_view what) {
        for (const auto& task : starter_.tasks)
            if (task.code == code)
                for (const auto& line : task.kit)
                    if (line.what == what)
                        return line.amount;
        return std::int64_t{0};
    };
    EXPECT_EQ(amountOf("fork-service", "fork seal"), 2);
    EXPECT_EQ(amountOf("fork-service", "fork dust seal"), 2);
    EXPECT_EQ(amountOf("piston-kit", "circlip"), 2);
    EXPECT_EQ(amountOf("rear-wheel-bearings", "rear wheel seal"), 2);
    EXPECT_EQ(amountOf("bottom-end", "main bearing"), 2);
}

// A task that nobody classed reads as "costs money" and as felt: a key that is left out must be meant.
TEST_P(StartersTest, EveryTaskSaysItsClass) {
    const auto told = nlohmann::json::parse(shippedText(GetParam())).at("tasks");
    for (const auto& task : told)
        EXPECT_TRUE(task.contains("consequence")) << task.at("code");
    for (const auto& task : starter_.tasks) {
        if (task.consequence == upkeep::Consequence::SafetyHidden) {
            EXPECT_FALSE(task.felt) << task.code << ": hidden, yet the rider feels it";
        }
    }
    for (const char* hidden : {"frame-check", "frame-bare", "bottom-end"})
        EXPECT_EQ(withCode(starter_.tasks, hidden)->consequence, upkeep::Consequence::SafetyHidden) << hidden;
}

TEST_P(StartersTest, EveryHazardStandsOnTheTasksThatNeedIt) {
    for (const auto& danger : kDangers)
        for (const auto& task : starter_.tasks)
            if (danger.is(task)) {
                EXPECT_TRUE(std::any_of(task.cautions.begin(), task.cautions.end(),
                                        [&](const auto& caution) { return caution.hazard == danger.hazard; }))
                    << task.code << " lacks the caution for " << danger.what;
            }
}

TEST_P(StartersTest, AGenericTorqueIsForFewJoints) {
    for (const auto& joint : starter_.joints) {
        const auto band = fastening::genericBand({.kind = joint.kind,
                                                  .name = joint.name,
                                                  .thread = "M8x1.25",
                                                  .propertyClass = "8.8",
                                                  .engagement = 1.5});
        EXPECT_EQ(band.has_value(), kGenericMayServe.contains(joint.code)) << joint.code;
    }
}

// Without an odometer nobody knows how far it went: a safety task would then be reckoned from an open end and
// never be in hand.
TEST_P(StartersTest, KilometresStandBesideHoursAndOnNoSafetyTask) {
    for (const auto& task : starter_.tasks)
        for (const auto& limit : task.limits) {
            if (limit.counter != upkeep::Counter::Metres)
                continue;
            EXPECT_FALSE(upkeep::isSafety(task.consequence)) << task.code;
            EXPECT_TRUE(std::any_of(task.limits.begin(), task.limits.end(), [](const auto& other) {
                return other.counter == upkeep::Counter::Hours || other.counter == upkeep::Counter::Outings;
            })) << task.code;
        }
}

// What a task brings on must be in use where the task is.
TEST_P(StartersTest, NothingInUseWaitsForWhatIsNot) {
    for (const auto& task : starter_.tasks) {
        if (!task.active)
            continue;
        EXPECT_TRUE(task.nthOf.empty() || withCode(starter_.tasks, task.nthOf)->active) << task.code;
        for (const auto& followUp : task.followUps)
            EXPECT_TRUE(followUp.code.empty() || withCode(starter_.tasks, followUp.code)->active)
                << task.code << " -> " << followUp.code;
    }
    for (const auto& step : starter_.steps)
        for (const auto& followUp : step.followUps)
            EXPECT_TRUE(followUp.code.empty() || withCode(starter_.tasks, followUp.code)->active)
                << step.code << " -> " << followUp.code;
}

TEST(StartersFolderTest, HoldsThoseAndTheProgramBringsThem) {
    std::set<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(test::repositoryPath("resources/starters")))
        files.insert(entry.path().filename().string());
    EXPECT_EQ(files, std::set<std::string>(kShippedStarters.begin(), kShippedStarters.end()));
    const std::string brought = test::repositoryText("resources/witnessmark.qrc");
    std::set<std::string> names;
    for (const std::string& file : files) {
        EXPECT_NE(brought.find("<file alias=\"" + file + "\">starters/" + file + "</file>"),
                  std::string::npos)
            << file;
        EXPECT_TRUE(names.insert(shippedStarter(file).name).second) << file;
    }
}

TEST(StartersPairTest, OneJobHasOneCodeOnBoth) {
    const auto two = codesOf(shippedStarter("two-stroke-motocross.json").tasks);
    const auto four = codesOf(shippedStarter("four-stroke-motocross.json").tasks);
    std::vector<std::string> shared;
    std::set_intersection(two.begin(), two.end(), four.begin(), four.end(), std::back_inserter(shared));
    EXPECT_GE(shared.size(), 60U) << "a wheel or fork moved between the two takes its clock along";
    EXPECT_TRUE(two.contains("gearbox-oil") && !four.contains("gearbox-oil"));
    EXPECT_TRUE(four.contains("valve-clearance") && !two.contains("valve-clearance"));
}

// The same code means the same job of the same item, of the same weight, wherever it stands.
TEST(StartersPairTest, ACodeMeansTheSameEverywhere) {
    std::map<std::string, upkeep::TaskVersion> tasks;
    std::map<std::string, fastening::JointVersion> joints;
    for (const char* file : kShippedStarters) {
        const Starter starter = shippedStarter(file);
        for (const auto& task : starter.tasks) {
            const auto& other = tasks.try_emplace(task.code, task).first->second;
            EXPECT_EQ(task.position, other.position) << file << ' ' << task.code;
            EXPECT_EQ(task.consequence, other.consequence) << file << ' ' << task.code;
            EXPECT_EQ(task.renews, other.renews) << file << ' ' << task.code;
        }
        for (const auto& joint : starter.joints)
            EXPECT_EQ(joint.kind, joints.try_emplace(joint.code, joint).first->second.kind)
                << file << ' ' << joint.code;
    }
}

// Thought through for its kind: of the tasks that it shares with the motocross machine of its engine, most
// come round otherwise or are done otherwise.
TEST(StartersPairTest, EnduroAndYouthAreNoCopies) {
    const std::map<std::string, std::string> nearest{
        {"four-stroke-enduro.json", "four-stroke-motocross.json"},
        {"small-wheel-youth.json", "two-stroke-motocross.json"}};
    for (const auto& [file, near] : nearest) {
        const Starter starter = shippedStarter(file);
        const Starter other = shippedStarter(near);
        std::size_t same = 0;
        std::size_t shared = 0;
        for (const auto& task : starter.tasks)
            if (const auto* twin = withCode(other.tasks, task.code)) {
                ++shared;
                same += *twin == task ? 1 : 0;
            }
        EXPECT_LT(3 * same, shared) << file << ": " << same << " of " << shared;
    }
}

TEST(StartersEnduroTest, HasWhatTheRoadAsksFor) {
    const Starter enduro = shippedStarter("four-stroke-enduro.json");
    for (const char* code : {"lights", "headlamp-aim", "horn-switches", "mirrors", "number-plate",
                             "side-stand", "hand-guards", "sump-guard", "radiator-fan", "odometer", "battery",
                             "electric-start", "spark-arrestor", "water-crossing"}) {
        const auto* task = withCode(enduro.tasks, code);
        ASSERT_NE(task, nullptr) << code;
        EXPECT_TRUE(task->active) << code;
    }
    const auto* papers = withCode(enduro.tasks, "road-inspection");
    ASSERT_NE(papers, nullptr);
    EXPECT_TRUE(papers->limits.empty()) << "how often is for local rules: left blank";
    EXPECT_NE(papers->howTo.find("local rules"), std::string::npos);
    const auto countsKilometres = [](const upkeep::TaskVersion& task) {
        return std::any_of(task.limits.begin(), task.limits.end(),
                           [](const auto& limit) { return limit.counter == upkeep::Counter::Metres; });
    };
    EXPECT_GE(std::count_if(enduro.tasks.begin(), enduro.tasks.end(), countsKilometres), 5);
    EXPECT_EQ(withCode(enduro.tasks, "oil-filter")->nth, 1);
    EXPECT_FALSE(withCode(enduro.tasks, "kick-start")->active) << "not every one has it";
}

TEST(StartersYouthTest, IsSetUpForAChild) {
    const Starter youth = shippedStarter("small-wheel-youth.json");
    for (const char* code : {"kill-lanyard", "throttle-limiter", "rider-fit", "hand-on", "spring-rate",
                             "chain-guard", "exhaust-guard", "premix"}) {
        const auto* task = withCode(youth.tasks, code);
        ASSERT_NE(task, nullptr) << code;
        EXPECT_TRUE(task->active) << code;
    }
    for (const char* code : {"front-drum", "rear-drum", "automatic-clutch", "idle-creep", "cooling-fins",
                             "clutch-fluid", "linkage-grease", "power-valve"}) {
        const auto* task = withCode(youth.tasks, code);
        ASSERT_NE(task, nullptr) << code;
        EXPECT_FALSE(task->active) << code << ": of the other build";
    }
    const auto* sag = withCode(youth.tasks, "sag-set");
    EXPECT_TRUE(std::any_of(sag->limits.begin(), sag->limits.end(), [](const auto& limit) {
        return limit.counter == upkeep::Counter::Months;
    })) << "the child grows whether it rides or not";
    const auto* handOn = withCode(youth.tasks, "hand-on");
    std::set<std::string> brings;
    for (const auto& followUp : handOn->followUps)
        brings.insert(followUp.code);
    EXPECT_TRUE(brings.contains("throttle-limiter") && brings.contains("kill-lanyard") &&
                brings.contains("sag-set"));
}

}  // namespace
}  // namespace wm::exchange
