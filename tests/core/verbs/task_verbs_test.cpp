// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/verbs/bench.h"

namespace wm::verbs {
namespace {

using base::Fault;
using units::Decimal;
using upkeep::Counter;
using upkeep::Happening;
using upkeep::TaskVersion;

class TaskVerbsTest : public testing::Test, public FurnishedBench {
  protected:
    TaskVersion chain{};
    void SetUp() override {
        chain.machine = heron;
        chain.name = "Chain slack";
        chain.limits = {{.every = 300, .first = 100, .allowance = 50}};
    }
    At taskWith(const std::function<void(TaskVersion&)>& spoil) {
        TaskVersion other = chain;
        spoil(other);
        return refusedAt(saying(saveTask, other));
    }
    At stepWith(const std::function<void(weekend::StepVersion&)>& spoil) {
        weekend::StepVersion other{.machine = heron, .name = "Seat"};
        spoil(other);
        return refusedAt(saying(saveStep, other));
    }
    At jointWith(const std::function<void(fastening::JointVersion&)>& spoil) {
        fastening::JointVersion other{.machine = heron, .name = "seat bolt", .source = "service manual"};
        spoil(other);
        return refusedAt(saying(saveJoint, other));
    }
    weekend::StepVersion addStep(const char* code, std::vector<weekend::Need> needs) {
        must(saying(saveStep, weekend::StepVersion{
                                  .machine = heron, .code = code, .name = code, .needs = std::move(needs)}));
        return ledger().all<weekend::StepVersion>().back();
    }
};

TEST_F(TaskVerbsTest, AddsATaskAndItsNextVersion) {
    EXPECT_EQ(must(saying(saveTask, chain)), "added the task \"Chain slack\" on Heron 250");
    TaskVersion version = ledger().all<TaskVersion>().back();
    EXPECT_EQ(version.code, "chain-slack");
    EXPECT_EQ(version.validFrom, today);
    EXPECT_NE(version.task.value(), 0);
    EXPECT_NE(version.task.value(), version.id.value());
    version.limits[0].every = 250;
    version.code.clear();
    version.validFrom = {};
    today = day("2026-05-25");
    EXPECT_EQ(must(saying(saveTask, version)), "changed the task \"Chain slack\" on Heron 250");
    EXPECT_EQ(book().task(version.task)->limits[0].every, 250);
    EXPECT_EQ(book().task(version.task)->code, "chain-slack");
    version = *book().task(version.task);
    EXPECT_EQ(refusedAt(saying(saveTask, version)), At(Fault::NothingToDo, "name"));
    version.active = false;
    EXPECT_EQ(must(saying(saveTask, version)), "retired the task \"Chain slack\" on Heron 250");
    EXPECT_EQ(ledger().all<TaskVersion>().size(), 5U);
    version.code = "chain";
    EXPECT_EQ(refusedAt(saying(saveTask, version)), At(Fault::Inconsistent, "code"));
    version.task = TaskId{5};
    EXPECT_EQ(refusedAt(saying(saveTask, version)), At(Fault::Unknown, "id"));
}

TEST_F(TaskVerbsTest, ARecordNamesTheVersionOfItsDay) {
    chain.validFrom = day("2026-03-01");
    must(saying(saveTask, chain));
    TaskVersion version = ledger().all<TaskVersion>().back();
    const TaskVersionId first = version.id;
    version.name = "Chain slack, sand";
    version.validFrom = day("2026-04-01");
    must(saying(saveTask, version));
    must(record({.record = job(version.task, "2026-03-31")}));
    EXPECT_EQ(ledger().all<upkeep::Record>().back().version, first);
    must(record({.record = job(version.task, "2026-04-01")}));
    EXPECT_EQ(ledger().all<upkeep::Record>().back().version, ledger().all<TaskVersion>().back().id);
    EXPECT_EQ(ledger().all<upkeep::Record>().back().what, "Chain slack, sand");
    must(record({.record = job(version.task, "2026-02-01")}));  // noted later than done
    EXPECT_EQ(ledger().all<upkeep::Record>().back().version, first);
}

TEST_F(TaskVerbsTest, RefusesWordsThatCannotBeRead) {
    EXPECT_EQ(taskWith([](auto& t) { t.machine = MachineId{1}; }), At(Fault::Unknown, "machine"));
    EXPECT_EQ(taskWith([](auto& t) { t.name = ""; }), At(Fault::Empty, "name"));
    EXPECT_EQ(taskWith([](auto& t) { t.name = "***"; }), At(Fault::Empty, "code"));
    EXPECT_EQ(taskWith([](auto& t) { t.name = "a\xff"; }), At(Fault::NotText, "name"));
    EXPECT_EQ(taskWith([](auto& t) { t.code = "two words"; }), At(Fault::Malformed, "code"));
    EXPECT_EQ(taskWith([](auto& t) { t.code = "OIL-CHANGE"; }), At(Fault::Duplicate, "code"));
    EXPECT_EQ(taskWith([](auto& t) { t.name = "Oil change"; }), At(Fault::Duplicate, "code"));
    EXPECT_EQ(taskWith([](auto& t) { t.position = "engine//piston"; }), At(Fault::Malformed, "position"));
    EXPECT_EQ(taskWith([](auto& t) { t.howTo = "\x01"; }), At(Fault::NotText, "how_to"));
    EXPECT_EQ(taskWith([](auto& t) { t.validFrom = day("2026-05-21"); }), At(Fault::InFuture, "valid_from"));
    EXPECT_EQ(taskWith([](auto& t) { t.validFrom = day("2026-01-09"); }),
              At(Fault::BeforeItsTime, "valid_from"));
    EXPECT_EQ(taskWith([](auto& t) { t.confirmed = true; }), At(Fault::Empty, "source"));
    EXPECT_EQ(taskWith([](auto& t) { t.minutes = units::Minutes{-1}; }), At(Fault::Negative, "minutes"));
}

TEST_F(TaskVerbsTest, AShortNameHasAtMost18Characters) {
    chain.shortName = "üüüüüüüüüüüüüüüüüü";
    must(saying(saveTask, chain));
    EXPECT_EQ(ledger().all<TaskVersion>().back().shortName, chain.shortName);
    chain.task = ledger().all<TaskVersion>().back().task;
    chain.shortName += "x";
    EXPECT_EQ(refused(saying(saveTask, chain)), (base::Error{Fault::TooLong, "short_name", "", "18"}));
}

TEST_F(TaskVerbsTest, RefusesIntervalsThatCountNothing) {
    EXPECT_EQ(taskWith([](auto& t) { t.limits[0].every = 0; }), At(Fault::NotPositive, "limits[0].every"));
    EXPECT_EQ(taskWith([](auto& t) { t.limits[0].every = 10'000'001; }),
              At(Fault::TooLarge, "limits[0].every"));
    EXPECT_EQ(taskWith([](auto& t) { t.limits.push_back({.counter = Counter::Months, .every = 1218}); }),
              At(Fault::TooLarge, "limits[1].every"));
    EXPECT_EQ(taskWith([](auto& t) { t.limits[0].first = 0; }), At(Fault::NotPositive, "limits[0].first"));
    EXPECT_EQ(taskWith([](auto& t) { t.limits[0].allowance = -1; }),
              At(Fault::Negative, "limits[0].allowance"));
    EXPECT_EQ(taskWith([](auto& t) { t.limits[0].hard = true; }),
              At(Fault::OutOfOrder, "limits[0].allowance"));
    EXPECT_EQ(taskWith([](auto& t) { t.limits.push_back(t.limits[0]); }),
              At(Fault::Duplicate, "limits[1].counter"));
    EXPECT_EQ(taskWith([](auto& t) { t.everyNth = 2; }), At(Fault::Empty, "extra"));
    EXPECT_EQ(taskWith([](auto& t) { t.extra = "rod"; }), At(Fault::NotPositive, "every_nth"));
    EXPECT_EQ(taskWith([](auto& t) { t.nth = 2; }), At(Fault::Empty, "nth_of"));
    EXPECT_EQ(taskWith([](auto& t) { t.nthOf = "oil-change"; }), At(Fault::NotPositive, "nth"));
    EXPECT_EQ(taskWith([](auto& t) {
                  t.nthOf = "oil-change";
                  t.nth = 2;
              }),
              At(Fault::Inconsistent, "limits"));
    chain.limits.clear();
    chain.nth = 2;
    EXPECT_EQ(taskWith([](auto& t) { t.nthOf = "chain-slack"; }), At(Fault::Cycle, "nth_of"));
    EXPECT_EQ(taskWith([](auto& t) { t.nthOf = "fork"; }), At(Fault::Unknown, "nth_of"));
    chain.nthOf = "oil-change";
    must(saying(saveTask, chain));
}

TEST_F(TaskVerbsTest, RefusesWeightsThatCannotBe) {
    const auto weighted = [&](std::vector<usage::HourWeight> weights) {
        return taskWith([&](auto& t) { t.weights = weights; });
    };
    const usage::HourWeight mud{.ground = usage::Ground::Mud, .permille = 1500};
    EXPECT_EQ(weighted({mud, {.permille = 0}}), At(Fault::NotPositive, "weights[1].permille"));
    EXPECT_EQ(weighted({{.permille = 10'001}}), At(Fault::TooLarge, "weights[0].permille"));
    EXPECT_EQ(weighted({mud, mud}), At(Fault::Duplicate, "weights[1].ground"));
    chain.weights = {mud, {.pace = usage::Pace::Race, .permille = 1200}};
    must(saying(saveTask, chain));
    EXPECT_EQ(ledger().all<upkeep::TaskVersion>().back().weights, chain.weights);
}

TEST_F(TaskVerbsTest, RefusesWhatATaskNamesAndIsNotThere) {
    EXPECT_EQ(taskWith([](auto& t) { t.steps = {{"seat"}}; }), At(Fault::Unknown, "steps[0].code"));
    EXPECT_EQ(taskWith([](auto& t) {
                  t.steps = {{"rear-wheel"}, {"rear-wheel"}};
              }),
              At(Fault::Duplicate, "steps[1].code"));
    EXPECT_EQ(taskWith([](auto& t) {
                  t.joints = {{"axle"}, {"seat"}};
              }),
              At(Fault::Unknown, "joints[1].code"));
    EXPECT_EQ(taskWith([](auto& t) { t.triggers = {{.happening = Happening::Job, .code = "fork"}}; }),
              At(Fault::Unknown, "triggers[0].code"));
    EXPECT_EQ(taskWith([](auto& t) { t.triggers = {{.happening = Happening::Job, .code = "chain-slack"}}; }),
              At(Fault::Cycle, "triggers[0].code"));
    EXPECT_EQ(taskWith([](auto& t) { t.triggers = {{.happening = Happening::Wash, .code = "oil-change"}}; }),
              At(Fault::Inconsistent, "triggers[0].code"));
    EXPECT_EQ(taskWith([](auto& t) { t.triggers = {{.happening = Happening::Job}}; }),
              At(Fault::Empty, "triggers[0].code"));
    EXPECT_EQ(taskWith([](auto& t) { t.followUps = {{.what = "x", .code = "fork"}}; }),
              At(Fault::Unknown, "follow_ups[0].code"));
    EXPECT_EQ(taskWith([](auto& t) { t.followUps = {{.what = ""}}; }),
              At(Fault::Empty, "follow_ups[0].what"));
    EXPECT_EQ(taskWith([](auto& t) { t.followUps = {{.what = "x", .when = upkeep::When::AfterDays}}; }),
              At(Fault::NotPositive, "follow_ups[0].amount"));
    EXPECT_EQ(taskWith([](auto& t) { t.kit = {{.what = "lube", .amount = 0}}; }),
              At(Fault::NotPositive, "kit[0].amount"));
    EXPECT_EQ(taskWith([](auto& t) { t.kit = {{.what = "lube", .line = StockLineId{1}}}; }),
              At(Fault::Unknown, "kit[0].line"));
    EXPECT_EQ(taskWith([this](auto& t) { t.kit = {{.what = "oil", .line = oil}}; }),
              At(Fault::WrongUnit, "kit[0].unit"));
}

TEST_F(TaskVerbsTest, RefusesMeasuresThatContradictThemselves) {
    const auto with = [this](std::vector<upkeep::MeasurePoint> measures) {
        return taskWith([&](auto& t) { t.measures = measures; });
    };
    EXPECT_EQ(with({{.name = ""}}), At(Fault::Empty, "measures[0].name"));
    EXPECT_EQ(with({{.name = "slack"}, {.name = "Slack"}}), At(Fault::Duplicate, "measures[1].name"));
    EXPECT_EQ(with({{.name = "slack", .least = Decimal{60, 0}, .most = Decimal{55, 0}}}),
              At(Fault::OutOfOrder, "measures[0].most"));
    EXPECT_EQ(with({{.name = "slack", .least = Decimal{1, 7}}}), At(Fault::TooLarge, "measures[0].least"));
    chain.measures = {{.name = "slack", .unit = "mm", .least = Decimal{55, 0}, .most = Decimal{55, 0}}};
    must(saying(saveTask, chain));
}

TEST_F(TaskVerbsTest, SavesAnAccessStep) {
    const auto seat = addStep("seat", {});
    EXPECT_EQ(must(saying(saveStep,
                          [&] {
                              auto version = seat;
                              version.off = units::Minutes{3};
                              return version;
                          }())),
              "changed the access step \"seat\" on Heron 250");
    EXPECT_EQ(stepWith([](auto& s) { s.code = "rear-wheel"; }), At(Fault::Duplicate, "code"));
    EXPECT_EQ(stepWith([](auto& s) { s.name = ""; }), At(Fault::Empty, "name"));
    EXPECT_EQ(stepWith([](auto& s) { s.off = units::Minutes{-1}; }), At(Fault::Negative, "off_minutes"));
    EXPECT_EQ(stepWith([](auto& s) {
                  s.code = "tank";
                  s.needs = {{.code = "shroud"}};
              }),
              At(Fault::Unknown, "needs[0].code"));
    EXPECT_EQ(stepWith([](auto& s) {
                  s.code = "tank";
                  s.needs = {{.code = "tank"}};
              }),
              At(Fault::Cycle, "needs[0].code"));
    EXPECT_EQ(stepWith([](auto& s) {
                  s.code = "tank";
                  s.looseBefore = {{"shroud"}};
              }),
              At(Fault::Unknown, "loose_before[0].code"));
    EXPECT_EQ(stepWith([](auto& s) {
                  s.code = "tank";
                  s.joints = {{"tank-bolt"}};
              }),
              At(Fault::Unknown, "joints[0].code"));
}

TEST_F(TaskVerbsTest, AStepIsNotBoundToWhatIsNotThereNorToItself) {
    using upkeep::Deed;
    addStep("seat", {});
    const auto withEdge = [&](Deed earlier, const char* earlierCode, Deed later, const char* laterCode) {
        weekend::StepVersion step{.machine = heron, .code = "tank", .name = "Tank off"};
        step.edges = {{{earlier, earlierCode}, {later, laterCode}}};
        return refusedAt(saying(saveStep, step));
    };
    EXPECT_EQ(withEdge(Deed::Crack, "tank-bolt", Deed::Off, "seat"),
              At(Fault::Unknown, "edges[0].earlier_code"));
    EXPECT_EQ(withEdge(Deed::Off, "seat", Deed::On, "shroud"), At(Fault::Unknown, "edges[0].later_code"));
    EXPECT_EQ(withEdge(Deed::Do, "pump", Deed::On, "seat"), At(Fault::Unknown, "edges[0].earlier_code"));
    EXPECT_EQ(withEdge(Deed::Off, "seat", Deed::Off, "seat"), At(Fault::Cycle, "edges[0].later_code"));
    EXPECT_EQ(withEdge(Deed::On, "tank", Deed::Off, "tank"), At(Fault::Cycle, "edges[0].later_code"));
}

TEST_F(TaskVerbsTest, StepsCannotNeedEachOtherInACircle) {
    auto seat = addStep("seat", {});
    addStep("tank", {{.code = "seat"}});
    addStep("head", {{.code = "tank"}});
    seat.needs = {{.code = "head"}};
    const auto error = refused(saying(saveStep, seat));
    EXPECT_EQ(At(error.fault, error.field.text()), At(Fault::Cycle, "needs[0].code"));
    EXPECT_EQ(error.given, "head → seat → tank → head") << "each before one that needs it";
    seat.needs = {{.code = "rear-wheel"}};
    must(saying(saveStep, seat));
}

TEST_F(TaskVerbsTest, WhatMayHaveBeenMeantIsNamed) {
    using upkeep::Deed;
    addStep("seat", {});
    weekend::StepVersion step{.machine = heron, .name = "Tank off", .needs = {{.code = "seta"}}};
    EXPECT_EQ(refused(saying(saveStep, step)).wanted, "seat");
    step.needs.clear();
    step.edges = {{{Deed::Torque, "axel"}, {Deed::Off, "seat"}}};
    const auto error = refused(saying(saveStep, step));
    EXPECT_EQ(error.given, "axel");
    EXPECT_EQ(error.wanted, book().joint(axle)->name);
    step.edges = {{{Deed::Torque, "reer axel"}, {Deed::Off, "seat"}}};
    EXPECT_EQ(refused(saying(saveStep, step)).wanted, book().joint(axle)->name) << "typed as a name";
    step.edges = {{{Deed::Torque, "zzz"}, {Deed::Off, "seat"}}};
    EXPECT_EQ(refused(saying(saveStep, step)).wanted, "") << "nobody could have meant one of them";
}

TEST_F(TaskVerbsTest, ActsThatWaitForEachOtherAreNamedAtTheLineThatMakesThem) {
    using upkeep::Deed;
    auto seat = addStep("seat", {});
    seat.name = "Seat off";
    must(saying(saveStep, seat));
    weekend::StepVersion tank{
        .machine = heron, .code = "tank", .name = "Tank off", .needs = {{.code = "seat"}}};
    tank.doings = {{.what = "Look at the hose", .comes = upkeep::Comes::Between}};
    tank.edges = {{{Deed::Do, "look-at-the-hose"}, {Deed::On, "seat"}},
                  {{Deed::On, "seat"}, {Deed::Do, "look-at-the-hose"}}};
    const auto error = refused(saying(saveStep, tank));
    EXPECT_EQ(At(error.fault, error.field.text()), At(Fault::Cycle, "edges[1].later_code"));
    EXPECT_TRUE(error.given == "do Look at the hose → on Seat off → do Look at the hose" ||
                error.given == "on Seat off → do Look at the hose → on Seat off")
        << error.given;
    tank.edges.pop_back();
    must(saying(saveStep, tank));
    // A circle through what another step says is found at the line of this one.
    seat.edges = {{{Deed::On, "seat"}, {Deed::On, "tank"}}};
    const auto other = refused(saying(saveStep, seat));
    EXPECT_EQ(At(other.fault, other.field.text()), At(Fault::Cycle, "edges[0].later_code"));
    EXPECT_EQ(other.given.find("job "), std::string::npos) << other.given;
}

TEST_F(TaskVerbsTest, ADoingIsCodedByItsWordsAndStaysWhileAnOrderSpeaksOfIt) {
    using upkeep::Deed;
    auto seat = addStep("seat", {});
    seat.doings = {{.what = "Pump the brake"}};
    must(saying(saveStep, seat));
    seat = ledger().all<weekend::StepVersion>().back();
    EXPECT_EQ(seat.doings[0].code, "pump-the-brake");
    auto tank = addStep("tank", {});
    tank.edges = {{{Deed::On, "tank"}, {Deed::Do, "pump-the-brake"}}};
    must(saying(saveStep, tank));
    seat.doings.clear();
    const auto error = refused(saying(saveStep, seat));
    EXPECT_EQ(At(error.fault, error.field.text()), At(Fault::Inconsistent, "doings"));
    EXPECT_EQ(error.given, "Pump the brake");
    EXPECT_EQ(error.wanted, "tank");
    tank.doings = {{.code = "pump-the-brake", .what = "Pump it"}};
    must(saying(saveStep, tank));
    must(saying(saveStep, seat));  // somebody else still asks for it
}

TEST_F(TaskVerbsTest, AStepInUseStays) {
    auto seat = addStep("seat", {});
    auto tank = addStep("tank", {{.code = "seat"}});
    seat.active = false;
    const auto error = refused(saying(saveStep, seat));
    EXPECT_EQ(error.fault, Fault::Inconsistent);
    EXPECT_EQ(error.given, "tank");
    tank.needs.clear();
    tank.looseBefore = {{"seat"}};
    must(saying(saveStep, tank));
    EXPECT_EQ(refusedAt(saying(saveStep, seat)), At(Fault::Inconsistent, "active"))
        << "something is cracked loose while it is on";
    tank.active = false;
    must(saying(saveStep, tank));
    must(saying(saveStep, seat));
    auto rear = ledger().all<weekend::StepVersion>().front();
    rear.active = false;
    EXPECT_EQ(refused(saying(saveStep, rear)).given, "Brake pads");
}

TEST_F(TaskVerbsTest, SavesAJointAsTheManualPrintsIt) {
    EXPECT_EQ(must(saying(saveJoint, fastening::JointVersion{.machine = heron,
                                                             .name = "Pinch bolts",
                                                             .count = 4,
                                                             .torque = Decimal{200, 1},
                                                             .torqueHigh = Decimal{200, 1},
                                                             .source = "service manual",
                                                             .page = "7-12"})),
              "added the joint \"Pinch bolts\" on Heron 250");
    EXPECT_EQ(ledger().all<fastening::JointVersion>().back().torque->text(), "20.0");
    EXPECT_EQ(book().joint(heron, "pinch-bolts")->count, 4);
    EXPECT_EQ(jointWith([](auto& j) { j.code = "axle"; }), At(Fault::Duplicate, "code"));
    EXPECT_EQ(jointWith([](auto& j) { j.count = 0; }), At(Fault::NotPositive, "count"));
    EXPECT_EQ(jointWith([](auto& j) { j.count = 1001; }), At(Fault::TooLarge, "count"));
    EXPECT_EQ(jointWith([](auto& j) { j.torque = Decimal{0, 2}; }), At(Fault::NotPositive, "torque"));
    EXPECT_EQ(jointWith([](auto& j) { j.torque = Decimal{-5, 0}; }), At(Fault::NotPositive, "torque"));
    EXPECT_EQ(jointWith([](auto& j) { j.torque = Decimal{100'001, 0}; }), At(Fault::TooLarge, "torque"));
    EXPECT_EQ(jointWith([](auto& j) { j.torqueHigh = Decimal{20, 0}; }), At(Fault::Empty, "torque"));
    EXPECT_EQ(jointWith([](auto& j) {
                  j.torque = Decimal{20, 0};
                  j.torqueHigh = Decimal{199, 1};
              }),
              At(Fault::OutOfOrder, "torque_high"));
    EXPECT_EQ(jointWith([](auto& j) {
                  j.torque = Decimal{20, 0};
                  j.source = " ";
              }),
              At(Fault::Empty, "source"));
    EXPECT_EQ(jointWith([](auto& j) { j.sequence = fastening::Sequence::EveryNth; }),
              At(Fault::NotPositive, "sequence_step"));
    EXPECT_EQ(jointWith([](auto& j) { j.sequenceStep = 3; }), At(Fault::Inconsistent, "sequence_step"));
    EXPECT_EQ(jointWith([](auto& j) { j.thread = "\xff"; }), At(Fault::NotText, "thread"));
}

TEST_F(TaskVerbsTest, AdoptsAScheduleWhole) {
    must(saying(saveMachine, items::Machine{.name = "Otter 125", .since = day("2026-02-01")}));
    const MachineId otter = last<items::Machine>();
    const std::vector<weekend::StepVersion> steps{
        {.code = "tank", .name = "Tank", .needs = {{.code = "seat"}}},
        {.code = "seat", .name = "Seat", .joints = {{"seat-bolt"}}}};
    const std::vector<fastening::JointVersion> joints{{.code = "seat-bolt", .name = "seat bolt"}};
    std::vector<TaskVersion> tasks{{.name = "Plug", .nthOf = "filter", .nth = 2, .steps = {{"tank"}}},
                                   {.code = "filter", .name = "Filter", .limits = {{.every = 200}}}};
    EXPECT_EQ(must(saying(adoptSchedule, otter, "took over a schedule on Otter 125", steps, joints, tasks)),
              "took over a schedule on Otter 125");
    ASSERT_EQ(book().tasks(otter).size(), 2U);
    EXPECT_EQ(book().tasks(otter)[0]->validFrom, day("2026-02-01"));
    EXPECT_EQ(book().tasks(otter)[0]->machine, otter);
    EXPECT_EQ(refusedAt(saying(adoptSchedule, otter, "again", steps, joints, tasks)),
              At(Fault::Duplicate, "steps[0].code"));
    tasks = {{.name = "Fork", .limits = {{.every = 200}}}, {.name = "Shock", .limits = {{.every = 0}}}};
    EXPECT_EQ(refusedAt(saying(adoptSchedule, otter, "more", {}, {}, tasks)),
              At(Fault::NotPositive, "tasks[1].limits[0].every"));
    tasks[1].limits.clear();
    tasks[1].steps = {{"shock"}};
    EXPECT_EQ(refusedAt(saying(adoptSchedule, otter, "more", {}, {}, tasks)),
              At(Fault::Unknown, "tasks[1].steps[0].code"));
    EXPECT_EQ(refusedAt(saying(adoptSchedule, otter, "none", {}, {}, {})), At(Fault::NothingToDo, "tasks"));
    EXPECT_EQ(refusedAt(saying(adoptSchedule, otter, " ", steps, joints, tasks)), At(Fault::Empty, "text"));
    EXPECT_EQ(refusedAt(saying(adoptSchedule, MachineId{2}, "x", steps, joints, tasks)),
              At(Fault::Unknown, "machine"));
}

}  // namespace
}  // namespace wm::verbs
