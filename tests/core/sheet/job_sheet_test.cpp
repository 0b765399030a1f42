// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/job_sheet.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "tests/core/sheet/small_garage.h"

namespace wm::sheet {
namespace {

using base::Fault;
using testing::ElementsAre;
using testing::IsEmpty;
using upkeep::Hazard;

JobSheet smallSheet(char mark = '.') {
    const auto sheet = jobSheet(bookOf(smallGarage()), kHeron, 14, mark);
    EXPECT_TRUE(sheet.has_value());
    return sheet.value_or(JobSheet{});
}

// The one line of a kind whose text begins so.
const SheetLine& lineOf(const JobSheet& sheet, LineKind kind, const std::string& begins) {
    const auto at = std::find_if(sheet.lines.begin(), sheet.lines.end(), [&](const SheetLine& line) {
        return line.kind == kind && line.text.starts_with(begins);
    });
    EXPECT_NE(at, sheet.lines.end()) << begins;
    static const SheetLine none;
    return at == sheet.lines.end() ? none : *at;
}

TEST(JobSheetTest, HeadsTheSheetWithMachineMeterTargetAndTime) {
    const JobSheet sheet = smallSheet();
    EXPECT_EQ(sheet.number, 14);
    EXPECT_EQ(sheet.machine, "Heron 250");
    EXPECT_EQ(sheet.configuration, "engine: no. 2 · rear wheel: mud");
    EXPECT_EQ(sheet.meter, "61.3 h");
    EXPECT_EQ(sheet.totalTime, "61.3 h");
    EXPECT_EQ(sheet.date, "Thu 14 May 2026");
    EXPECT_EQ(sheet.target, "Birch Hollow, Sat 16 May 2026 (2 days)");
    EXPECT_EQ(sheet.window, "Fri 15 May 2026 18:00 to 20:00, 1 pair of hands");
    EXPECT_EQ(sheet.workTime, "110 of 120 min");
    EXPECT_THAT(sheet.jobs, testing::UnorderedElementsAre("Rear tyre", "Linkage"));
}

TEST(JobSheetTest, PutsTheWorkInOrderWithClockAndWords) {
    const JobSheet sheet = smallSheet();
    std::vector<std::string> lines;
    for (const SheetLine& line : sheet.lines)
        lines.push_back(line.clock + " " + line.text);
    EXPECT_THAT(lines, ElementsAre("18:00 Crack loose: Rear axle nut, wheel on the ground",
                                   "18:00 Clean, on the stand", "18:03 Rear wheel out", "18:07 Rear tyre",
                                   "18:42 Linkage off", "18:52 Linkage", "19:27 Refit: Linkage",
                                   "19:41 Refit: Rear wheel", "19:48 Off the stand",
                                   "19:50 Safe to stop here: the machine is whole"));
}

TEST(JobSheetTest, CountsFromZeroWithoutAWorkWindow) {
    auto rows = smallGarage();
    std::erase_if(rows, [](const auto& row) { return std::holds_alternative<weekend::WorkWindow>(row); });
    const auto sheet = jobSheet(bookOf(rows), kHeron, 0);
    EXPECT_EQ(sheet->lines[3].clock, "+0:07");
    EXPECT_EQ(sheet->window, "");
    EXPECT_EQ(sheet->workTime, "110 min");
}

TEST(JobSheetTest, SaysWhenTheEveningIsTooShort) {
    auto rows = smallGarage();
    for (auto& row : rows)
        if (auto* window = std::get_if<weekend::WorkWindow>(&row))
            window->endsAt = units::Minutes{19 * 60};
    EXPECT_EQ(jobSheet(bookOf(rows), kHeron, 1)->workTime, "110 of 60 min: 50 min too long");
}

TEST(JobSheetTest, PrintsATorqueWithItsUnitAndSource) {
    const JobSheet sheet = smallSheet();
    const SheetLine& wheel = lineOf(sheet, LineKind::On, "Refit: Rear wheel");
    ASSERT_EQ(wheel.torques.size(), 2U);
    EXPECT_EQ(wheel.torques[0].joint, "Rear axle nut");
    EXPECT_EQ(wheel.torques[0].figure.text, "110 N·m");
    EXPECT_EQ(wheel.torques[0].figure.converted, "");
    EXPECT_EQ(wheel.torques[0].figure.source, "service manual p. 2-31");
    EXPECT_TRUE(wheel.torques[0].figure.confirmed);
    EXPECT_EQ(wheel.torques[1].figure.text, "150 to 177 lbf·in");
    // 150 and 177 lbf·in are 16.948 and 19.998 N·m (1 lbf·in = 0.1129848 N·m, NIST SP 811 B.8), at the
    // source's digits.
    EXPECT_EQ(wheel.torques[1].figure.converted, "16.9 to 20.0 N·m");
    EXPECT_FALSE(wheel.torques[1].figure.confirmed);
    EXPECT_TRUE(sheet.anyUnconfirmed);
    EXPECT_EQ(wheel.howTo, "Caliper hanger in its rail");
}

TEST(JobSheetTest, LeavesABlankForATorqueThatNobodyTyped) {
    const JobSheet sheet = smallSheet();
    const SheetLine& linkage = lineOf(sheet, LineKind::On, "Refit: Linkage");
    ASSERT_EQ(linkage.torques.size(), 2U);
    EXPECT_EQ(linkage.torques[0].joint, "Linkage bolt");
    EXPECT_EQ(linkage.torques[0].figure.text, "");
    EXPECT_FALSE(linkage.torques[0].figure.confirmed);
    EXPECT_EQ(linkage.torques[1].joint, "gone-bolt") << "a code without a joint still has to be tightened";
    EXPECT_FALSE(linkage.torques[1].jointId.has_value());
}

TEST(JobSheetTest, ShowsAJointOnceWhereItIsClosedForTheLastTime) {
    const JobSheet sheet = smallSheet();
    EXPECT_THAT(lineOf(sheet, LineKind::Job, "Rear tyre").torques, IsEmpty());
    const auto& torques = lineOf(sheet, LineKind::On, "Refit: Rear wheel").torques;
    EXPECT_EQ(std::count_if(torques.begin(), torques.end(),
                            [](const TorqueLine& torque) { return torque.jointId == kAxleNut; }),
              1);
}

TEST(JobSheetTest, AsksForASignatureWhereTheRiderMayFall) {
    const JobSheet sheet = smallSheet();
    EXPECT_TRUE(lineOf(sheet, LineKind::Job, "Rear tyre").safety);
    EXPECT_TRUE(lineOf(sheet, LineKind::On, "Refit: Rear wheel").safety);
    EXPECT_FALSE(lineOf(sheet, LineKind::Job, "Linkage").safety);
    EXPECT_FALSE(lineOf(sheet, LineKind::Off, "Rear wheel out").safety);
}

TEST(JobSheetTest, PrintsCautionsAtTheStepAndOnceOnTop) {
    const JobSheet sheet = smallSheet();
    EXPECT_THAT(lineOf(sheet, LineKind::Off, "Rear wheel out").hazards, ElementsAre(Hazard::Lifting));
    EXPECT_THAT(lineOf(sheet, LineKind::On, "Refit: Rear wheel").hazards, ElementsAre(Hazard::Wheels));
    EXPECT_THAT(sheet.cautions, ElementsAre(Hazard::Lifting, Hazard::Wheels, Hazard::FirstRide));
}

TEST(JobSheetTest, SetsTheLastValueAndTheLimitBesideABlank) {
    const JobSheet sheet = smallSheet();
    const auto& measures = lineOf(sheet, LineKind::Job, "Linkage").measures;
    ASSERT_EQ(measures.size(), 2U);
    EXPECT_EQ(measures[0].last, "0.04 mm at 48.9 h, 12 Mar 2026");
    EXPECT_EQ(measures[0].limit, "at most 0.10 mm");
    EXPECT_FALSE(measures[0].limitConfirmed);
    EXPECT_EQ(measures[1].last, "");
    EXPECT_EQ(measures[1].limit, "");
}

TEST(JobSheetTest, SaysWhichMeasuredValueMadeAJobDue) {
    auto rows = smallGarage();
    for (auto& row : rows) {
        if (auto* task = std::get_if<upkeep::TaskVersion>(&row); task != nullptr && task->task == kLinkage)
            task->measures[0].job = "rear-tyre";
        if (auto* record = std::get_if<upkeep::Record>(&row))
            record->measured = {{"sleeve wear", "mm", units::Decimal{10, 2}}};
    }
    const auto sheet = jobSheet(bookOf(rows), kHeron, 1, ',');
    ASSERT_TRUE(sheet.has_value());
    EXPECT_EQ(lineOf(*sheet, LineKind::Job, "Rear tyre").howTo,
              "Measured 12 Mar 2026: sleeve wear 0,10 mm, limit 0,10.");
    EXPECT_EQ(lineOf(*sheet, LineKind::Job, "Linkage").howTo,
              "Engine cold. Every needle there. This time as well: new seals");
}

TEST(JobSheetTest, AddsStagedWorkEngineStateAndQuantityToTheStep) {
    const JobSheet sheet = smallSheet();
    const SheetLine& linkage = lineOf(sheet, LineKind::Job, "Linkage");
    EXPECT_EQ(linkage.howTo, "Engine cold. Every needle there. This time as well: new seals");
    ASSERT_EQ(linkage.quantities.size(), 1U);
    EXPECT_EQ(linkage.quantities[0].text, "linkage grease 25 g");
    EXPECT_FALSE(linkage.quantities[0].confirmed) << "printed with the wedge";
}

TEST(JobSheetTest, WarmsTheEngineBeforeAnythingIsOpenedForIt) {
    auto rows = smallGarage();
    for (auto& row : rows)
        if (auto* task = std::get_if<upkeep::TaskVersion>(&row); task != nullptr && task->task == kLinkage)
            task->bodyState = upkeep::BodyState::Warm;
    const auto sheet = jobSheet(bookOf(rows), kHeron, 1);
    const SheetLine& run = lineOf(*sheet, LineKind::Run, "Run the engine");
    EXPECT_THAT(run.text, testing::HasSubstr("outside"));
    EXPECT_THAT(run.hazards, ElementsAre(Hazard::Exhaust, Hazard::HotParts));
    EXPECT_FALSE(run.field.empty()) << "it is ticked as any other line";
    const SheetLine& job = lineOf(*sheet, LineKind::Job, "Linkage");
    EXPECT_EQ(job.howTo, "Engine warm. Every needle there. This time as well: new seals");
    EXPECT_THAT(job.hazards, testing::Contains(Hazard::HotParts));
    const auto at = [&](const SheetLine& line) { return &line - sheet->lines.data(); };
    EXPECT_LT(at(run), at(lineOf(*sheet, LineKind::Off, "Linkage off")));
}

TEST(JobSheetTest, PullsEachThingOnceWithPlaceAndShortage) {
    const JobSheet sheet = smallSheet();
    const auto find = [&](const std::string& what) {
        const auto at = std::find_if(sheet.pull.begin(), sheet.pull.end(),
                                     [&](const PullLine& line) { return line.what == what; });
        EXPECT_NE(at, sheet.pull.end()) << what;
        return at == sheet.pull.end() ? PullLine{} : *at;
    };
    ASSERT_EQ(sheet.pull.size(), 5U);
    const PullLine grease = find("Waterproof grease");
    EXPECT_EQ(grease.amount, "35 g") << "10 g for the tyre and 25 g for the linkage";
    EXPECT_EQ(grease.place, "drawer 3");
    EXPECT_FALSE(grease.enough);
    EXPECT_EQ(grease.shortBy, "short 15 g");
    EXPECT_TRUE(find("Rear tyre, intermediate").enough);
    EXPECT_EQ(find("Rear tyre, intermediate").partNumber, "RT-18");
    EXPECT_FALSE(find("rags").onShelfList);
    EXPECT_TRUE(find("bearing kit").onlyIfNeeded);
    EXPECT_EQ(sheet.pull[3].what, "bearing kit") << "what may be needed stands after what is";
    EXPECT_EQ(sheet.pull[4].what, "Rear axle nut: new cotter each time");
}

TEST(JobSheetTest, NamesToolsOnceAndTheWrenchesForTheTorques) {
    EXPECT_THAT(smallSheet().tools,
                testing::UnorderedElementsAre("tyre levers", "bead tool", "press",
                                              "torque wrench for 16 to 20 N·m", "torque wrench for 110 N·m",
                                              "service manual: 1 joint has no torque here yet"));
}

std::vector<std::string> wrenchesWith(const std::vector<std::pair<fastening::Tool, bool>>& drawer,
                                      std::int64_t atTheAxle = 110) {
    auto rows = smallGarage();
    for (picture::Row& row : rows)
        if (auto* joint = std::get_if<fastening::JointVersion>(&row); joint && joint->joint == kAxleNut)
            joint->torque = units::Decimal{atTheAxle, 0};
    std::int64_t id = 900;
    for (auto [tool, checked] : drawer) {
        tool.id = ToolId{++id};
        rows.emplace_back(tool);
        if (checked)
            rows.emplace_back(fastening::Calibration{.id = CalibrationId{++id},
                                                     .entered = id,
                                                     .tool = tool.id,
                                                     .date = bookOf(smallGarage()).today()});
    }
    const auto sheet = jobSheet(bookOf(rows), kHeron, 14);
    EXPECT_TRUE(sheet.has_value());
    std::vector<std::string> words;
    for (const std::string& tool : sheet.value_or(JobSheet{}).tools)
        if (tool.find("N·m") != std::string::npos)
            words.push_back(tool);
    return words;
}

fastening::Tool wrench(const char* name, std::int64_t low, std::int64_t high) {
    return {.name = name, .low = units::Decimal{low, 0}, .high = units::Decimal{high, 0}};
}

// 110 N·m at the axle, 150 to 177 lbf·in (16.9 to 20.0 N·m) at the adjusters.
TEST(JobSheetTest, NamesTheWrenchesOfTheDrawerAndWhatNoneReaches) {
    EXPECT_THAT(wrenchesWith({{wrench("Long red", 20, 200), true}, {wrench("Middle click", 5, 25), true}}),
                testing::UnorderedElementsAre("Long red: 110 N·m", "Middle click: 16 to 20 N·m"));
    EXPECT_THAT(wrenchesWith({{wrench("Middle click", 5, 25), true}}),
                testing::UnorderedElementsAre("Middle click: 16 to 20 N·m",
                                              "no wrench of the drawer reaches 110 N·m (Rear axle nut)"));
    EXPECT_THAT(wrenchesWith({{wrench("Long red", 20, 200), false}, {wrench("Old bar", 0, 50), false}}),
                testing::UnorderedElementsAre("Long red: 110 N·m; never checked",
                                              "Old bar: 16 to 20 N·m; never checked"));
}

// One that serves it all is taken alone; at its edge it says so.
TEST(JobSheetTest, FewWrenchesAreCarried) {
    // By themselves the middle one would be nearer to 16 to 20 N·m, but the long one serves that too.
    EXPECT_THAT(wrenchesWith({{wrench("Long", 10, 90), true}, {wrench("Middle", 5, 25), true}}, 80),
                testing::ElementsAre("Long: 16 to 80 N·m"));
    EXPECT_THAT(wrenchesWith({{wrench("Long", 10, 90), false}, {wrench("Middle", 5, 25), true}}, 80),
                testing::UnorderedElementsAre("Long: 80 N·m; never checked", "Middle: 16 to 20 N·m"));
    const auto edge = wrenchesWith({{wrench("Long red", 10, 200), true}});
    ASSERT_EQ(edge.size(), 1U);
    EXPECT_THAT(edge.front(), testing::StartsWith("Long red: 16 to 110 N·m; at the edge of its range for "));
}

TEST(JobSheetTest, ListsWhatToCheckAfterwardsAtOnceFirst) {
    std::vector<std::string> lines;
    for (const FollowUpLine& line : smallSheet().followUps)
        lines.push_back(line.what + "/" + line.because + "/" + line.when);
    EXPECT_THAT(lines, ElementsAre("Rear brake pumped until it is hard/Rear wheel/before it is ridden",
                                   "Spokes/Rear wheel/after the next outing", "Sag/Linkage/after 2.0 h"));
}

// The linkage goes away and the wheel stays out: nobody pumps its brake now.
TEST(JobSheetTest, WhatNeedsAPartThatStaysOffIsAskedForOnceItIsBackOn) {
    auto rows = smallGarage();
    upkeep::TaskVersion pump;
    for (auto& row : rows) {
        auto* task = std::get_if<upkeep::TaskVersion>(&row);
        if (task == nullptr)
            continue;
        task->sendsOut = task->task == kLinkage;
        if (task->task == kTyre) {
            task->followUps = {{"", "pump", upkeep::When::AtOnce, 0}, {"Bead", "", upkeep::When::AtOnce, 0}};
            pump = *task;
        }
    }
    pump.id = TaskVersionId{900};
    pump.task = TaskId{901};
    pump.code = "pump";
    pump.name = "Pump the rear brake";
    pump.followUps.clear();
    pump.edges = {{{upkeep::Deed::On, "rear-wheel-out"}, {upkeep::Deed::Job, "pump"}}};
    rows.emplace_back(pump);
    std::erase_if(rows, [](const auto& row) { return std::holds_alternative<outlook::Event>(row); });
    const auto sheet = jobSheet(bookOf(rows), kHeron, 1);
    ASSERT_TRUE(sheet.has_value());
    std::vector<std::string> lines;
    for (const FollowUpLine& line : sheet->followUps)
        if (line.because == "Rear tyre")
            lines.push_back(line.what + "/" + line.when);
    EXPECT_THAT(lines, ElementsAre("Pump the rear brake/once back on: Rear wheel; before it is ridden",
                                   "Bead/before it is ridden"));
}

TEST(JobSheetTest, ListsChecksThatEarlierWorkStillAsksFor) {
    auto rows = smallGarage();
    std::erase_if(rows, [](const auto& row) {
        const auto* pick = std::get_if<weekend::Pick>(&row);
        return pick != nullptr && pick->task == kLinkage;
    });
    const auto sheet = jobSheet(bookOf(rows), kHeron, 1);
    ASSERT_EQ(sheet->followUps.size(), 3U);
    EXPECT_EQ(sheet->followUps[1].what, "Sag");
    EXPECT_EQ(sheet->followUps[1].because, "Linkage, 12 Mar 2026");
    EXPECT_TRUE(sheet->followUps[1].atOnce);
}

TEST(JobSheetTest, ShowsWhatIsOpenAlready) {
    const JobSheet sheet = smallSheet();
    EXPECT_THAT(sheet.openSnags, ElementsAre("weeping fork seal, left (12 Apr 2026), put off until 20 May "
                                             "2026: kit on order"));
    EXPECT_THAT(sheet.handTight, ElementsAre("Linkage bolt (loosened 9 May 2026)"));
}

TEST(JobSheetTest, RestoresTheLastSettingOfWhatIsFitted) {
    const JobSheet sheet = smallSheet();
    ASSERT_EQ(sheet.settings.size(), 1U) << "the spare shock is not on the machine";
    EXPECT_EQ(sheet.settings[0].name, "fork compression");
    EXPECT_EQ(sheet.settings[0].value, "12 clicks");
    EXPECT_EQ(sheet.settings[0].noted, "2 May 2026");
}

TEST(JobSheetTest, GivesEveryBoxAnIdOfItsOwnAndTheSameEachTime) {
    const auto idsOf = [](const JobSheet& sheet) {
        std::vector<std::string> ids;
        for (const SheetLine& line : sheet.lines) {
            if (line.kind != LineKind::SafeStop)
                ids.push_back(line.field);
            for (const TorqueLine& torque : line.torques)
                ids.push_back(torque.field);
            for (const MeasureLine& measure : line.measures)
                ids.push_back(measure.field);
        }
        for (const auto& line : sheet.pull)
            ids.push_back(line.field);
        for (const auto& line : sheet.followUps)
            ids.push_back(line.field);
        for (const auto& line : sheet.settings)
            ids.push_back(line.field);
        for (const auto& line : sheet.writeBack)
            ids.push_back(line.field);
        return ids;
    };
    const auto ids = idsOf(smallSheet());
    const std::set<std::string> distinct(ids.begin(), ids.end());
    EXPECT_EQ(distinct.size(), ids.size());
    EXPECT_FALSE(distinct.contains(""));
    EXPECT_EQ(ids, idsOf(smallSheet()));
    EXPECT_TRUE(distinct.contains("T1") && distinct.contains("M2") && distinct.contains("W8"));
}

TEST(JobSheetTest, WritesFiguresWithTheGivenDecimalMark) {
    const JobSheet sheet = smallSheet(',');
    EXPECT_EQ(sheet.meter, "61,3 h");
    EXPECT_EQ(lineOf(sheet, LineKind::Job, "Linkage").measures[0].limit, "at most 0,10 mm");
    EXPECT_EQ(lineOf(sheet, LineKind::On, "Refit: Rear wheel").torques[1].figure.converted,
              "16,9 to 20,0 N·m");
}

TEST(JobSheetTest, TakesTheWorkOfTheTaskBehindASnag) {
    auto rows = smallGarage();
    for (auto& row : rows) {
        if (auto* snag = std::get_if<upkeep::Snag>(&row))
            snag->task = kLinkage;
        if (auto* pick = std::get_if<weekend::Pick>(&row); pick != nullptr && pick->task == kLinkage) {
            pick->task.reset();
            pick->snag = SnagId{92};
        }
    }
    const auto sheet = jobSheet(bookOf(rows), kHeron, 1);
    ASSERT_TRUE(sheet.has_value());
    const SheetLine& line = lineOf(*sheet, LineKind::Job, "weeping");
    EXPECT_EQ(line.measures.size(), 2U);
    EXPECT_EQ(line.snag, SnagId{92});
    EXPECT_THAT(sheet->openSnags, IsEmpty()) << "it is a job of this sheet";
}

TEST(JobSheetTest, RefusesAnUnknownMachineAndASheetOfNothing) {
    const auto book = bookOf(smallGarage());
    EXPECT_EQ(jobSheet(book, MachineId{999}, 1).error().fault, Fault::Unknown);
    EXPECT_EQ(jobSheet(book, kPlover, 1).error().fault, Fault::NothingToDo);
}

TEST(JobSheetTest, PassesOnAnAccessStepThatIsNotThere) {
    auto rows = smallGarage();
    for (auto& row : rows)
        if (auto* task = std::get_if<upkeep::TaskVersion>(&row))
            task->steps.push_back({"gone"});
    EXPECT_EQ(jobSheet(bookOf(rows), kHeron, 1).error(), (base::Error{Fault::Unknown, "step", "gone", ""}));
}

}  // namespace
}  // namespace wm::sheet
