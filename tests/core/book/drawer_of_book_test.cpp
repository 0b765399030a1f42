// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/drawer_of_book.h"

#include <gtest/gtest.h>

#include "tests/core/verbs/bench.h"

namespace wm::book {

using namespace verbs;

namespace {

using fastening::JointMark;
using fastening::JointVersion;
using fastening::MarkKind;
using units::Decimal;

class BookDrawerTest : public testing::Test, public FurnishedBench {
  protected:
    BookDrawerTest() {
        red = add("Long red", 20, 200);
        small = add("Small", 2, 12);
        JointVersion version = *book().joint(axle);
        version.torque = Decimal{110, 0};
        version.source = "service manual";
        must(saying(saveJoint, version));
    }
    ToolId add(const char* name, std::int64_t low, std::int64_t high) {
        fastening::Tool tool{.name = name, .type = fastening::ToolType::IIA};
        tool.low = Decimal{low, 0};
        tool.high = Decimal{high, 0};
        must(saying(saveTool, tool));
        return last<fastening::Tool>();
    }
    void check(ToolId tool, const char* on, bool found) {
        must(saying(recordCalibration,
                    fastening::Calibration{.tool = tool, .date = day(on), .foundWithin = found}));
    }
    void mark(const char* on, MarkKind kind, std::optional<ToolId> tool = {}) {
        must(saying(markJoints,
                    std::vector{JointMark{.joint = axle, .date = day(on), .kind = kind, .tool = tool}}));
    }
    std::string demands() {
        std::string words;
        for (const auto& each : book().followUps(heron))
            words += each.rule.what + " because " + each.because + ", since " + each.since.iso() + ";";
        return words;
    }
    ToolId red;
    ToolId small;
};

TEST_F(BookDrawerTest, NamesTheToolForAJoint) {
    const Book now = book();
    const auto choices = toolsFor(now, *now.joint(axle));
    ASSERT_EQ(choices.size(), 2U);
    EXPECT_EQ(choices[0].tool->id, red);
    EXPECT_EQ(choices[0].fit.reach, fastening::Reach::Serves);
    EXPECT_EQ(choices[1].fit.reach, fastening::Reach::Outside);
    EXPECT_EQ(usualTool(now, *now.joint(axle))->id, red);
    EXPECT_EQ(drawerOf(now)[0].standing.state, fastening::ToolState::Unknown);
}

TEST_F(BookDrawerTest, ProposesTheToolThatWasUsedLast) {
    mark("2026-03-01", MarkKind::Confirmed, small);
    const Book now = book();
    EXPECT_EQ(usualTool(now, *now.joint(axle))->id, small);
    fastening::Tool away = *ledger().find<fastening::Tool>(small);
    away.active = false;
    must(saying(saveTool, away));
    const Book then = book();
    EXPECT_EQ(usualTool(then, *then.joint(axle))->id, red);
}

// A tightening clicks once for each fastener and each torque of its stages, a look once for each fastener.
TEST_F(BookDrawerTest, CountsClicks) {
    JointVersion head{.machine = heron, .name = "Head nuts", .count = 4, .stages = "snug, 20, 38"};
    must(saying(saveJoint, head));
    const Book now = book();
    const JointId joint = now.joint(heron, "head-nuts")->joint;
    EXPECT_EQ(cyclesOf(now, {.joint = joint, .kind = MarkKind::Confirmed}), 8);
    EXPECT_EQ(cyclesOf(now, {.joint = joint, .kind = MarkKind::FoundFine}), 4);
    EXPECT_EQ(cyclesOf(now, {.joint = axle, .kind = MarkKind::Confirmed}), 1);
}

TEST_F(BookDrawerTest, AFailedCheckAsksForReChecksUntilTheyAreDone) {
    check(red, "2026-02-01", true);
    mark("2026-03-01", MarkKind::Confirmed, red);
    EXPECT_EQ(demands(), "");
    check(red, "2026-04-01", false);
    EXPECT_EQ(demands(),
              "re-check rear axle nut because tool Long red found out of tolerance, since 2026-04-01;");
    const auto origin = last<fastening::Calibration>().value();
    // Answered: looked at and found fine.
    must(saying(answerFollowUp, upkeep::FollowUpAnswer{.machine = heron,
                                                       .origin = origin,
                                                       .what = "re-check rear axle nut",
                                                       .date = day("2026-04-02")}));
    EXPECT_EQ(demands(), "");
    {
        const Book now = book();
        const auto recalls = recallsOf(now);
        ASSERT_EQ(recalls.size(), 1U);
        EXPECT_FALSE(stillDoubted(now, recalls[0], recalls[0].recall.lines[0]));
    }
    must(saying(strike, last<upkeep::FollowUpAnswer>().value(), "looked at the front one"));
    EXPECT_NE(demands(), "");
    mark("2026-04-03", MarkKind::Confirmed, small);
    EXPECT_NE(demands(), "") << "one that does not reach";
    mark("2026-04-03", MarkKind::Confirmed, std::nullopt);
    EXPECT_NE(demands(), "") << "with what, nobody said";
    const ToolId blue = add("Long blue", 40, 200);
    mark("2026-04-04", MarkKind::Confirmed, blue);
    EXPECT_NE(demands(), "") << "one that nobody ever checked";
    check(blue, "2026-04-05", true);
    EXPECT_NE(demands(), "") << "or too late";
    mark("2026-04-06", MarkKind::Confirmed, blue);
    EXPECT_EQ(demands(), "");
}

TEST_F(BookDrawerTest, ACheckOfTheAxlesClearsADoubtOnlyWithAToolThatIsVouchedFor) {
    upkeep::TaskVersion axles{.machine = heron, .validFrom = day("2026-01-10"), .name = "Axles: check"};
    axles.limits = {{.every = 500}};
    axles.joints = {{"axle"}};
    must(saying(saveTask, axles));
    const TaskId task = ledger().all<upkeep::TaskVersion>().back().task;
    const ToolId blue = add("Long blue", 40, 200);
    check(blue, "2026-01-20", true);
    mark("2026-03-01", MarkKind::Confirmed, red);
    check(red, "2026-04-01", false);
    ASSERT_NE(demands(), "");
    must(saying(recordJob, JobDraft{.record = job(task, "2026-04-02")}));
    EXPECT_NE(demands(), "") << "looked at";
    must(saying(recordJob, JobDraft{.record = job(task, "2026-04-03"), .confirmed = {axle}}));
    EXPECT_NE(demands(), "") << "a wrench on it, but which?";
    must(saying(recordJob, JobDraft{.record = job(task, "2026-04-04"), .confirmed = {axle}, .tool = blue}));
    EXPECT_EQ(demands(), "");
}

TEST_F(BookDrawerTest, AJobThatUndoesTheJointClearsItsDoubt) {
    mark("2026-03-01", MarkKind::Confirmed, red);
    check(red, "2026-04-01", false);
    JobDraft draft{.record = job(pads, "2026-04-02"), .confirmed = {axle}};
    draft.record.steps = {{"rear-wheel"}};
    must(saying(recordJob, draft));
    EXPECT_EQ(demands(), "");
}

TEST_F(BookDrawerTest, AGoodCheckAndAStruckOneAskForNothing) {
    mark("2026-03-01", MarkKind::Confirmed, red);
    check(red, "2026-04-01", true);
    EXPECT_EQ(demands(), "");
    const auto origin = last<fastening::Calibration>().value();
    EXPECT_EQ(refusedAt(saying(answerFollowUp, upkeep::FollowUpAnswer{.machine = heron,
                                                                      .origin = origin,
                                                                      .what = "re-check rear axle nut",
                                                                      .date = day("2026-04-02")})),
              At(base::Fault::Unknown, "origin"));
    check(red, "2026-04-02", false);
    EXPECT_EQ(demands(), "") << "nothing was tightened since the good one";
}

// By hand: tight on 1 March, 2 h ridden, moved on 3 March; tight again, 1 h ridden, fine on 6 March.
TEST_F(BookDrawerTest, CountsTheHoursBetweenChecks) {
    mark("2026-03-01", MarkKind::Confirmed);
    must(ride({.outing = outing("2026-03-02", 200)}));
    mark("2026-03-03", MarkKind::FoundMoved);
    mark("2026-03-03", MarkKind::Confirmed);
    must(ride({.outing = outing("2026-03-05", 100)}));
    mark("2026-03-06", MarkKind::FoundFine);
    const Book now = book();
    const auto lines = cameLoose(now, heron);
    ASSERT_EQ(lines.size(), 1U);
    EXPECT_EQ(lines[0].figures.checks, 2);
    EXPECT_EQ(lines[0].figures.moved, 1);
    EXPECT_EQ(lines[0].figures.ridden, units::Hours{300});
    EXPECT_FALSE(lines[0].comparison) << "there is no other axle";
    EXPECT_TRUE(cameLoose(now, MachineId{1}).empty());
}

}  // namespace
}  // namespace wm::book
