// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/drawer.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/fastening/recall.h"
#include "tests/core/made.h"

namespace wm::fastening {
namespace {

using made::day;
using units::Decimal;
using units::TorqueUnit;

Tool tool(std::int64_t id, const char* name, std::int64_t low, std::int64_t high,
          ToolType type = ToolType::IIA) {
    Tool made{.id = ToolId{id}, .name = name, .type = type};
    made.low = Decimal{low, 0};
    made.high = Decimal{high, 0};
    return made;
}

// Facts of one file, numbered as they are entered.
class Facts {
  public:
    void check(std::int64_t tool, const char* on, bool found = true, bool left = true) {
        calibrations.push_back({.id = CalibrationId{++last_},
                                .entered = last_,
                                .tool = ToolId{tool},
                                .date = day(on),
                                .foundWithin = found,
                                .leftWithin = left});
    }
    void mark(std::int64_t joint, const char* on, MarkKind kind, std::optional<std::int64_t> tool = {}) {
        JointMark made{
            .id = JointMarkId{++last_}, .entered = last_, .joint = JointId{joint}, .date = day(on)};
        made.kind = kind;
        if (tool)
            made.tool = ToolId{*tool};
        marks.push_back(made);
    }
    [[nodiscard]] ToolStanding of(const Tool& tool, const char* on) const {
        return standingOf(
            tool, calibrations, marks, [](const JointMark&) { return 4; }, day(on));
    }
    std::vector<Calibration> calibrations;
    std::vector<JointMark> marks;

  private:
    std::int64_t last_ = 0;
};

// ISO 6789-1: type II class A, 6 % up to 10 N·m of capacity and 4 % above. The other classes are from memory.
TEST(DrawerTest, KnowsWhatAToolIsPermitted) {
    EXPECT_EQ(permittedPercent(tool(1, "small", 2, 10)), 6.0);
    EXPECT_EQ(permittedPercent(tool(1, "click", 5, 25)), 4.0);
    Tool inInches = tool(1, "inch", 20, 88);
    inInches.unit = TorqueUnit::PoundForceInch;
    EXPECT_EQ(permittedPercent(inInches), 6.0) << "88 lbf·in are 9.9 N·m";
    EXPECT_EQ(permittedPercent(tool(1, "bar", 0, 150, ToolType::IA)), 6.0);
    EXPECT_EQ(permittedPercent(tool(1, "any", 0, 150, ToolType::Unstated)), std::nullopt);
    EXPECT_FALSE(permittedFromMemory(tool(1, "click", 5, 25)));
    EXPECT_TRUE(permittedFromMemory(tool(1, "bar", 0, 150, ToolType::IA)));
    EXPECT_FALSE(permittedFromMemory(tool(1, "any", 0, 150, ToolType::Unstated))) << "no figure at all";
}

// By hand: 12 months from 10 March 2025 are 10 March 2026; 4 clicks a mark.
TEST(DrawerTest, AToolIsCheckedByDateOrByCycles) {
    Facts facts;
    Tool red = tool(1, "Long red", 40, 200);
    EXPECT_EQ(facts.of(red, "2026-01-01").state, ToolState::Unknown);
    facts.mark(7, "2025-02-01", MarkKind::Confirmed, 1);
    facts.check(1, "2025-03-10");
    facts.mark(7, "2025-03-10", MarkKind::Confirmed, 1);
    facts.mark(7, "2025-04-01", MarkKind::FoundFine, 1);
    facts.mark(7, "2025-04-01", MarkKind::Confirmed, 2);
    const auto now = facts.of(red, "2026-03-09");
    EXPECT_EQ(now.state, ToolState::InHand);
    EXPECT_EQ(now.cycles, 8) << "the one before the check and the one of another tool don't count";
    EXPECT_EQ(now.nextOn, day("2026-03-10"));
    EXPECT_EQ(now.cyclesAllowed, 5000);
    EXPECT_EQ(facts.of(red, "2026-03-10").state, ToolState::DueByDate);
    red.cycles = 8;
    EXPECT_EQ(facts.of(red, "2026-03-09").state, ToolState::DueByCycles);
}

TEST(DrawerTest, AFailedCheckHalvesTheIntervalAndOneThatStaysOutBarsTheTool) {
    Facts facts;
    const Tool red = tool(1, "Long red", 40, 200);
    facts.check(1, "2026-01-10", false, true);
    EXPECT_EQ(facts.of(red, "2026-02-01").nextOn, day("2026-07-10"));
    EXPECT_EQ(facts.of(red, "2026-02-01").cyclesAllowed, 2500);
    facts.check(1, "2026-02-02", false, false);
    EXPECT_EQ(facts.of(red, "2026-02-03").state, ToolState::Out);
    const Choice choice{&red, facts.of(red, "2026-02-03"), {}};
    EXPECT_TRUE(toolsFor(Decimal{110, 0}, TorqueUnit::NewtonMetre, {&choice, 1}).empty());
}

std::string bestFor(const std::vector<Choice>& drawer, Decimal aim,
                    TorqueUnit unit = TorqueUnit::NewtonMetre) {
    std::string words;
    for (const Choice& choice : toolsFor(aim, unit, drawer)) {
        const char* reach = choice.fit.reach == Reach::Serves ? "serves"
                            : choice.fit.reach == Reach::Edge ? "edge"
                                                              : "outside";
        words += (words.empty() ? "" : ", ") + choice.tool->name + " " + reach;
    }
    return words;
}

// Common practice: 20 to 100 % of capacity, beware the bottom fifth. 200 N·m: from 40; 25 N·m: from 5.
TEST(DrawerTest, NamesTheToolThatServesBestTheEdgeAndTheGap) {
    const Tool small = tool(1, "small", 2, 12);
    const Tool mid = tool(2, "mid", 5, 25);
    const Tool red = tool(3, "red", 20, 200);
    std::vector<Choice> drawer{{&small, {}, {}}, {&mid, {}, {}}, {&red, {}, {}}};
    for (Choice& each : drawer)
        each.standing.state = ToolState::InHand;
    EXPECT_EQ(bestFor(drawer, Decimal{110, 0}), "red serves, mid outside, small outside");
    EXPECT_EQ(bestFor(drawer, Decimal{10, 0}), "mid serves, small serves, red outside");
    EXPECT_EQ(bestFor(drawer, Decimal{30, 0}), "red edge, mid outside, small outside");
    EXPECT_EQ(bestFor(drawer, Decimal{1, 0}), "small outside, mid outside, red outside");
    EXPECT_EQ(bestFor(drawer, Decimal{250, 0}), "red outside, mid outside, small outside");
    EXPECT_EQ(bestFor(drawer, Decimal{200, 0}), "red serves, mid outside, small outside");
    // 18.4 lbf·ft are 24.9 N·m.
    EXPECT_EQ(bestFor(drawer, Decimal{184, 1}, TorqueUnit::PoundForceFoot),
              "mid serves, red edge, small outside");
    // One that is due for its check stands behind one that is not.
    drawer[1].standing.state = ToolState::DueByDate;
    EXPECT_EQ(bestFor(drawer, Decimal{10, 0}), "small serves, mid serves, red outside");
}

// Both reach 24 N·m only at their edge, the old one even nearer to its middle. One that is due was right
// once.
TEST(DrawerTest, AToolThatWasNeverCheckedStandsBehindOneThatWas) {
    const Tool red = tool(2, "red", 20, 200);
    const Tool old = tool(1, "old", 0, 150);
    std::vector<Choice> drawer{{&old, {}, {}}, {&red, {}, {}}};
    drawer[0].standing.state = ToolState::Unknown;
    for (const ToolState state : {ToolState::InHand, ToolState::DueByDate, ToolState::DueByCycles}) {
        drawer[1].standing.state = state;
        EXPECT_EQ(bestFor(drawer, Decimal{24, 0}), "red edge, old edge");
        EXPECT_EQ(bestFor(drawer, Decimal{100, 0}), "red serves, old serves");
    }
    EXPECT_EQ(bestFor(drawer, Decimal{10, 0}), "old edge, red outside") << "one that reaches goes first";
}

TEST(DrawerTest, AScaleThatCannotBeSetToTheFigureIsAnEdge) {
    Tool red = tool(1, "red", 40, 200);
    red.resolution = Decimal{5, 0};
    EXPECT_EQ(fitOf(red, Decimal{110, 0}, TorqueUnit::NewtonMetre).reach, Reach::Serves);
    EXPECT_TRUE(fitOf(red, Decimal{108, 0}, TorqueUnit::NewtonMetre).betweenSteps);
    EXPECT_FALSE(fitOf(red, Decimal{109, 0}, TorqueUnit::NewtonMetre).betweenSteps)
        << "110 is within a hundredth of it";
    EXPECT_TRUE(fitOf(red, Decimal{42, 0}, TorqueUnit::NewtonMetre).betweenSteps);
}

TEST(DrawerTest, AimsAtTheMiddleOfARange) {
    EXPECT_EQ(aimOf(Decimal{110, 0}, {}).text(), "110");
    EXPECT_EQ(aimOf(Decimal{18, 0}, Decimal{22, 0}).text(), "20");
    EXPECT_EQ(aimOf(Decimal{40, 1}, Decimal{46, 1}).text(), "4.3");
    EXPECT_EQ(aimOf(Decimal{9, 0}, Decimal{12, 0}).text(), "10.5");
}

// By hand: checked good on 1 March, found out on 1 May. Joint 1 was tightened before, 2 and 3 between, 3
// again with another tool, 4 between and loosened since, 5 after.
TEST(RecallTest, ListsWhatWasTightenedSinceTheLastGoodCheck) {
    Facts facts;
    facts.mark(1, "2026-02-01", MarkKind::Confirmed, 1);
    facts.check(1, "2026-03-01");
    facts.mark(2, "2026-03-05", MarkKind::Confirmed, 1);
    facts.mark(3, "2026-03-06", MarkKind::Confirmed, 1);
    facts.mark(3, "2026-04-01", MarkKind::Confirmed, 2);
    facts.mark(2, "2026-04-02", MarkKind::Confirmed, 1);
    facts.mark(4, "2026-04-03", MarkKind::Confirmed, 1);
    facts.mark(4, "2026-04-20", MarkKind::Loosened);
    facts.mark(6, "2026-04-21", MarkKind::FoundFine, 1);
    facts.check(1, "2026-05-01", false, true);
    facts.mark(5, "2026-05-01", MarkKind::Confirmed, 1);
    const auto recalls = recallsOf(ToolId{1}, facts.calibrations, facts.marks, day("2026-05-10"));
    ASSERT_EQ(recalls.size(), 1U);
    EXPECT_EQ(recalls[0].lastGood->date, day("2026-03-01"));
    std::string joints;
    for (const RecallLine& line : recalls[0].lines)
        joints += std::to_string(line.tightened->joint.value()) + "x" + std::to_string(line.times) +
                  (line.since == nullptr ? " " : "- ");
    EXPECT_EQ(joints, "4x1- 2x2 3x1- ");
    // Confirmed again after the failure: nothing is left of it.
    facts.mark(2, "2026-05-02", MarkKind::Confirmed, 1);
    const auto after = recallsOf(ToolId{1}, facts.calibrations, facts.marks, day("2026-05-10"));
    EXPECT_NE(after[0].lines[1].since, nullptr);
    EXPECT_TRUE(recallsOf(ToolId{1}, facts.calibrations, facts.marks, day("2026-04-30")).empty());
}

TEST(RecallTest, WithoutAnEarlierCheckEverythingIsInDoubt) {
    Facts facts;
    facts.mark(1, "2020-02-01", MarkKind::Confirmed, 1);
    facts.check(1, "2026-05-01", false, false);
    facts.check(1, "2026-06-01", false, true);
    const auto recalls = recallsOf(ToolId{1}, facts.calibrations, facts.marks, day("2026-07-01"));
    ASSERT_EQ(recalls.size(), 2U) << "left out of tolerance by the first, so the second asks again";
    EXPECT_EQ(recalls[1].lastGood, nullptr);
    EXPECT_EQ(recalls[0].lines.size(), 1U);
}

TEST(RecallTest, SaysWhenAJointWasLastTightened) {
    Facts facts;
    facts.mark(1, "2026-02-01", MarkKind::Confirmed, 1);
    facts.mark(1, "2026-02-01", MarkKind::Confirmed, 2);
    facts.mark(1, "2026-02-03", MarkKind::FoundFine, 1);
    EXPECT_EQ(lastTightened(facts.marks, JointId{1}, day("2026-03-01"))->tool, ToolId{2});
    EXPECT_EQ(lastTightened(facts.marks, JointId{1}, day("2026-01-01")), nullptr);
    EXPECT_EQ(lastTightened(facts.marks, JointId{2}, day("2026-03-01")), nullptr);
}

// A line stands in the recall exactly if a plain walk over the facts, day by day, finds it.
RC_GTEST_PROP(RecallTest, AgreesWithAPlainWalk, ()) {
    Facts facts;
    const auto count = *rc::gen::inRange(0, 30);
    std::vector<std::int64_t> doubtful(4);
    for (int at = 0; at < count; ++at) {
        const auto joint = *rc::gen::inRange<std::int64_t>(0, 4);
        const auto what = *rc::gen::inRange(0, 4);
        if (what == 0) {
            facts.check(1, "2026-03-01", true);
            std::fill(doubtful.begin(), doubtful.end(), 0);
        } else {
            facts.mark(joint, "2026-03-01", MarkKind::Confirmed, what == 1 ? 2 : 1);
            if (what != 1)
                ++doubtful[static_cast<std::size_t>(joint)];
        }
    }
    facts.check(1, "2026-03-01", false);
    const auto recalls = recallsOf(ToolId{1}, facts.calibrations, facts.marks, day("2026-03-01"));
    RC_ASSERT(recalls.size() == 1U);
    std::vector<std::int64_t> found(4);
    for (const RecallLine& line : recalls[0].lines)
        found[static_cast<std::size_t>(line.tightened->joint.value())] =
            static_cast<std::int64_t>(line.times);
    RC_ASSERT(found == doubtful);
}

}  // namespace
}  // namespace wm::fastening
