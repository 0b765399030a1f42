// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "core/definitions/sharing.h"
#include "tests/core/verbs/bench.h"

// The drawer: tools, their checks, what a mark may say, and joints that a model shares.

namespace wm::verbs {

using book::Book;
using definitions::ModelYears;
using definitions::sharedText;
using definitions::sharedYears;

namespace {

using base::Fault;
using fastening::JointMark;
using fastening::JointVersion;
using fastening::MarkKind;
using units::Decimal;

class DrawerVerbsTest : public testing::Test, public FurnishedBench {
  protected:
    DrawerVerbsTest() {
        red.name = "Long red";
        red.low = Decimal{40, 0};
        red.high = Decimal{200, 0};
    }
    At toolWith(const std::function<void(fastening::Tool&)>& spoil) {
        fastening::Tool other = red;
        spoil(other);
        return refusedAt(saying(saveTool, other));
    }
    At checkWith(const std::function<void(fastening::Calibration&)>& spoil) {
        fastening::Calibration check{.tool = last<fastening::Tool>(), .date = day("2026-03-01")};
        spoil(check);
        return refusedAt(saying(recordCalibration, check));
    }
    At markWith(const std::function<void(JointMark&)>& spoil) {
        JointMark mark{.joint = axle, .date = day("2026-03-01"), .kind = MarkKind::FoundMoved};
        spoil(mark);
        return refusedAt(saying(markJoints, std::vector{mark}));
    }
    items::Machine twin(const char* name, std::int64_t year) {
        items::Machine machine = *ledger().find<items::Machine>(heron);
        machine.id = MachineId{};
        machine.name = name;
        machine.maker = "Brackwater";
        machine.model = "MX 250";
        machine.year = year;
        return machine;
    }
    JointVersion plug() const {
        return {.machine = heron,
                .name = "Drain plug",
                .torque = Decimal{20, 0},
                .source = "service manual",
                .sharedFrom = 2024,
                .sharedTo = 2026};
    }
    // Heron as a Brackwater MX 250 of 2024, and two more: one of 2026, one of 2027.
    void addTwins() {
        items::Machine card = twin("Heron 250", 2024);
        card.id = heron;
        must(saying(saveMachine, card));
        must(saying(saveMachine, twin("Kite 250", 2026)));
        kite = last<items::Machine>();
        must(saying(saveMachine, twin("Late 250", 2027)));
        late = last<items::Machine>();
    }

    fastening::Tool red;
    MachineId kite;
    MachineId late;
};

TEST_F(DrawerVerbsTest, AddsAndChangesATool) {
    EXPECT_EQ(must(saying(saveTool, red)), "added Long red in the drawer");
    EXPECT_EQ(toolWith([](auto&) {}), At(Fault::Duplicate, "name"));
    EXPECT_EQ(toolWith([](auto& t) { t.name = ""; }), At(Fault::Empty, "name"));
    EXPECT_EQ(toolWith([](auto& t) { t.high = Decimal{}; }), At(Fault::NotPositive, "high"));
    EXPECT_EQ(toolWith([](auto& t) { t.high = Decimal{39, 0}; }), At(Fault::OutOfOrder, "high"));
    EXPECT_EQ(toolWith([](auto& t) { t.low = Decimal{-1, 0}; }), At(Fault::Negative, "low"));
    EXPECT_EQ(toolWith([](auto& t) { t.resolution = Decimal{}; }), At(Fault::NotPositive, "resolution"));
    EXPECT_EQ(toolWith([](auto& t) { t.length = 0; }), At(Fault::NotPositive, "length"));
    EXPECT_EQ(toolWith([](auto& t) { t.cycles = 0; }), At(Fault::NotPositive, "cycles"));
    red.id = last<fastening::Tool>();
    EXPECT_EQ(refusedAt(saying(saveTool, red)), At(Fault::NothingToDo, "id"));
    red.drive = "1/2";
    EXPECT_EQ(must(saying(saveTool, red)), "changed Long red in the drawer");
    ASSERT_EQ(ledger().all<fastening::Tool>().size(), 1U);
    EXPECT_EQ(ledger().all<fastening::Tool>()[0].drive, "1/2");
}

TEST_F(DrawerVerbsTest, RecordsHowAToolWasFound) {
    must(saying(saveTool, red));
    const auto tool = last<fastening::Tool>();
    EXPECT_EQ(checkWith([](auto& c) { c.tool = ToolId{9}; }), At(Fault::Unknown, "tool"));
    EXPECT_EQ(checkWith([](auto& c) { c.date = day("2026-05-21"); }), At(Fault::InFuture, "date"));
    EXPECT_EQ(checkWith([](auto& c) { c.leftWithin = false; }), At(Fault::Inconsistent, "left_within"));
    EXPECT_EQ(checkWith([](auto& c) { c.worst = Decimal{101, 0}; }), At(Fault::TooLarge, "worst"));
    EXPECT_EQ(checkWith([](auto& c) { c.months = 0; }), At(Fault::NotPositive, "months"));
    EXPECT_EQ(must(saying(recordCalibration, fastening::Calibration{.tool = tool,
                                                                    .date = day("2026-03-01"),
                                                                    .foundWithin = false,
                                                                    .worst = Decimal{-72, 1},
                                                                    .byWhom = "Tessel Metrology"})),
              "found Long red out of tolerance");
    EXPECT_EQ(checkWith([](auto&) {}), At(Fault::Duplicate, "date"));
    EXPECT_EQ(must(saying(strike, last<fastening::Calibration>().value(), "another wrench")),
              "struck the calibration of 2026-03-01");
}

TEST_F(DrawerVerbsTest, AMarkSaysNoMoreThanItsKindCan) {
    must(saying(saveTool, red));
    const auto tool = last<fastening::Tool>();
    EXPECT_EQ(markWith([](auto& m) { m.tool = ToolId{9}; }), At(Fault::Unknown, "marks[0].tool"));
    EXPECT_EQ(markWith([](auto& m) { m.movedCount = 2; }), At(Fault::TooLarge, "marks[0].moved_count"));
    EXPECT_EQ(markWith([](auto& m) { m.movedDegrees = 0; }),
              At(Fault::NotPositive, "marks[0].moved_degrees"));
    EXPECT_EQ(markWith([](auto& m) {
                  m.kind = MarkKind::FoundFine;
                  m.movedDegrees = 5;
              }),
              At(Fault::Inconsistent, "marks[0].moved_degrees"));
    EXPECT_EQ(markWith([&](auto& m) {
                  m.kind = MarkKind::Loosened;
                  m.tool = tool;
              }),
              At(Fault::Inconsistent, "marks[0].tool"));
    EXPECT_EQ(must(saying(markJoints, std::vector{JointMark{.joint = axle,
                                                            .date = day("2026-03-01"),
                                                            .kind = MarkKind::MarkBroken,
                                                            .by = mara,
                                                            .movedDegrees = 15}})),
              "found the mark of rear axle nut broken on Heron 250");
    ASSERT_EQ(book().handTight(heron).size(), 1U);
    EXPECT_EQ(book().handTight(heron)[0].state.why, MarkKind::MarkBroken);
}

TEST_F(DrawerVerbsTest, AJobSaysWithWhatItsJointsWereTightened) {
    must(saying(saveTool, red));
    JobDraft draft{.record = job(pads, "2026-03-01"), .confirmed = {axle}, .tool = ToolId{9}};
    EXPECT_EQ(refusedAt(record(draft)), At(Fault::Unknown, "tool"));
    draft.tool = last<fastening::Tool>();
    must(record(draft));
    EXPECT_EQ(ledger().all<JointMark>().back().tool, draft.tool);
}

TEST_F(DrawerVerbsTest, WordsForAModelReachItsMachinesOfThoseYears) {
    addTwins();
    EXPECT_EQ(must(saying(saveJoint, plug())),
              "added the joint \"Drain plug\" on Heron 250 and 1 more of its model");
    ASSERT_NE(book().joint(kite, "drain-plug"), nullptr);
    EXPECT_EQ(book().joint(late, "drain-plug"), nullptr) << "2027 is not among the years";
    const JointId onKite = book().joint(kite, "drain-plug")->joint;
    EXPECT_NE(onKite, book().joint(heron, "drain-plug")->joint) << "each machine has its own joint";
    // A correction on either goes to both, and the joint of each stays the same one.
    JointVersion better = *book().joint(kite, "drain-plug");
    better.torque = Decimal{24, 0};
    must(saying(saveJoint, better));
    EXPECT_EQ(book().joint(heron, "drain-plug")->torque->text(), "24");
    EXPECT_EQ(book().joint(kite, "drain-plug")->joint, onKite);
    // Overruled for one machine: it keeps its own words from then on.
    JointVersion own = *book().joint(kite, "drain-plug");
    own.torque = Decimal{18, 0};
    own.sharedFrom = own.sharedTo = std::nullopt;
    EXPECT_EQ(must(saying(saveJoint, own)), "changed the joint \"Drain plug\" on Kite 250");
    JointVersion again = *book().joint(heron, "drain-plug");
    again.torque = Decimal{25, 0};
    EXPECT_EQ(must(saying(saveJoint, again)), "changed the joint \"Drain plug\" on Heron 250");
    EXPECT_EQ(book().joint(kite, "drain-plug")->torque->text(), "18");
}

// For which years a joint holds is known of one that was overruled too, so that it can go back to the others.
TEST_F(DrawerVerbsTest, AJointThatWasOverruledKnowsTheYearsOfTheOthers) {
    addTwins();
    must(saying(saveJoint, plug()));
    EXPECT_EQ(sharedYears(book(), *book().joint(heron, "drain-plug")), (ModelYears{2024, 2026}));
    JointVersion own = *book().joint(kite, "drain-plug");
    own.sharedFrom = own.sharedTo = std::nullopt;
    own.torque = Decimal{18, 0};
    must(saying(saveJoint, own));
    const Book now = book();
    EXPECT_EQ(sharedYears(now, *now.joint(kite, "drain-plug")), (ModelYears{2024, 2026}));
    EXPECT_EQ(sharedYears(now, *now.joint(axle)), std::nullopt);
    EXPECT_EQ(sharedText(*now.ledger().find<items::Machine>(kite), {2024, 2026}),
              "Brackwater MX 250 2024–2026");
    EXPECT_EQ(sharedText(*now.ledger().find<items::Machine>(kite), {2024, 2024}), "Brackwater MX 250 2024");
    own = *now.joint(kite, "drain-plug");
    own.sharedFrom = 2024;
    own.sharedTo = 2026;
    must(saying(saveJoint, own));
    EXPECT_EQ(book().joint(heron, "drain-plug")->torque->text(), "18") << "it holds for all of them again";
}

TEST_F(DrawerVerbsTest, AMachineOfTheModelTakesItsJointsOver) {
    addTwins();
    must(saying(saveJoint, plug()));
    EXPECT_EQ(must(saying(saveMachine, twin("Tern 250", 2025))), "added Tern 250 with 1 joint of its model");
    const auto tern = last<items::Machine>();
    ASSERT_NE(book().joint(tern, "drain-plug"), nullptr);
    EXPECT_EQ(book().joint(tern, "drain-plug")->torque->text(), "20");
    // The year of another was put right: it belongs to them now.
    items::Machine card = *ledger().find<items::Machine>(late);
    card.year = 2026;
    EXPECT_EQ(must(saying(saveMachine, card)), "changed Late 250 with 1 joint of its model");
    card.note = "repainted";
    EXPECT_EQ(must(saying(saveMachine, card)), "changed Late 250");
}

TEST_F(DrawerVerbsTest, WordsForAModelNeedOne) {
    EXPECT_EQ(refusedAt(saying(saveJoint, plug())), At(Fault::Empty, "model"));
    addTwins();
    const auto with = [&](const std::function<void(JointVersion&)>& spoil) {
        JointVersion version = plug();
        spoil(version);
        return refusedAt(saying(saveJoint, version));
    };
    EXPECT_EQ(with([](auto& j) { j.sharedTo = std::nullopt; }), At(Fault::Empty, "shared_to"));
    EXPECT_EQ(with([](auto& j) { j.sharedTo = 2023; }), At(Fault::OutOfOrder, "shared_from"));
    EXPECT_EQ(with([](auto& j) { j.sharedFrom = 2025; }), At(Fault::OutOfOrder, "shared_from"));
}

TEST_F(DrawerVerbsTest, AWholeChartIsOneStep) {
    const std::vector<JointVersion> chart{
        {.name = "Drain plug", .torque = Decimal{20, 0}, .source = "manual"},
        {.name = "Sump bolts", .count = 6, .stages = "snug, 5, 10"}};
    EXPECT_EQ(must(saying(saveJoints, heron, chart)), "entered 2 joints on Heron 250");
    EXPECT_EQ(book().joints(heron).size(), 3U);
    const std::vector<JointVersion> bad{{.name = "Seat bolt"},
                                        {.name = "Tank bolt", .torque = Decimal{9, 0}}};
    EXPECT_EQ(refusedAt(saying(saveJoints, heron, bad)), At(Fault::Empty, "joints[1].source"));
    EXPECT_EQ(refusedAt(saying(saveJoints, heron, std::vector<JointVersion>{})),
              At(Fault::NothingToDo, "joints"));
}

}  // namespace
}  // namespace wm::verbs
