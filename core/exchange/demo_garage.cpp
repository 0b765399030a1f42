// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Who and what there is in the garage, and how it is used.
#include "core/book/joints_then.h"
#include "core/exchange/demo_stage.h"

namespace wm::exchange {

using base::Error;
using base::Fault;
using verbs::VerbContext;

namespace {

template <class Card>
void readPast(DemoLine& line, Card& card) {
    card.startedNew = line.yes("new");
    card.pastLow = line.hours("past_low");
    card.pastBest = line.hours("past_best");
    card.pastHigh = line.hoursIf("past_high");
}

// The kits of a schedule know no shelf; the garage's ties say which line each means.
void tieKits(const DemoStage& stage, DemoLine& line, std::string_view machine,
             std::vector<upkeep::TaskVersion>& tasks) {
    for (upkeep::TaskVersion& task : tasks)
        for (upkeep::KitLine& kit : task.kit)
            for (const KitTie& tie : stage.ties())
                if (tie.what == kit.what && (tie.machine == machine || (tie.machine == "*" && !kit.line)))
                    kit.line = stage.shelfLine(line, tie.line);
}

void adopt(DemoStage& stage, DemoLine& line, const items::Machine& machine) {
    const Starter* starter = stage.starter(machine.starter);
    if (starter == nullptr) {
        line.fail(Error{Fault::Unknown, "starter", machine.starter, {}});
        return;
    }
    if (line.fault())
        return;
    auto tasks = starter->tasks;
    tieKits(stage, line, machine.name, tasks);
    const auto id = stage.machineNamed(machine.name).value_or(MachineId{});
    stage.say(line, [&](const VerbContext& context) {
        return verbs::adoptSchedule(context, id, "took over the schedule " + starter->name, starter->steps,
                                    starter->joints, tasks);
    });
}

// Where an item goes: a machine or another item, by name.
void readPlace(DemoStage& stage, DemoLine& line, std::string_view column, items::Move& move) {
    move.machine = stage.machineNamed(line.text(column));
    if (!move.machine)
        move.parent = stage.item(line, column);
    move.position = line.text("position");
}

}  // namespace

void sayPerson(DemoStage& stage, DemoLine& line) {
    const items::Person person{.name = line.text("name")};
    stage.say(line, [&](const VerbContext& context) { return verbs::savePerson(context, person); });
}

void sayMachine(DemoStage& stage, DemoLine& line) {
    items::Machine machine{.name = line.text("name"),
                           .maker = line.text("maker"),
                           .model = line.text("model"),
                           .year = line.countIf("year"),
                           .starter = line.text("starter"),
                           .since = line.day("day"),
                           .note = line.text("note")};
    readPast(line, machine);
    stage.say(line, [&](const VerbContext& context) { return verbs::saveMachine(context, machine); });
    if (!machine.starter.empty())
        adopt(stage, line, machine);
}

// What was put on was torqued that evening, and what was undone in it; a job that left something hand-tight
// says so itself.
void torqueWhatHolds(DemoStage& stage, DemoLine& line) {
    if (line.fault())
        return;
    const auto marks = stage.ask([&](const book::Book& book) {
        const auto& ledger = book.ledger();
        std::vector<fastening::JointMark> torqued;
        const auto moved = items::movedAt(ledger.all<items::Move>(), ledger.all<items::Item>(), book.today());
        if (moved.empty() || !moved.back().came)
            return torqued;
        const auto held = book::jointsHolding(book, moved.back());
        const auto& inside = book.jointsThen(moved.back().machine).inside;
        for (const book::OpenJoint& open : book.handTight(moved.back().machine))
            if (!open.state.record && open.state.why == fastening::MarkKind::Loosened &&
                (held.contains(open.joint->joint) || inside.contains(open.joint->joint)))
                torqued.push_back({.joint = open.joint->joint,
                                   .date = moved.back().move->date,
                                   .kind = fastening::MarkKind::Confirmed});
        return torqued;
    });
    if (!marks.empty())
        stage.say(line, [&](const VerbContext& context) { return verbs::markJoints(context, marks); });
}

void sayItem(DemoStage& stage, DemoLine& line) {
    items::Item item{.name = line.text("name"),
                     .kind = line.text("kind"),
                     .maker = line.text("maker"),
                     .partNumber = line.text("part"),
                     .since = line.day("day"),
                     .note = line.text("note")};
    readPast(line, item);
    if (!line.has("fitted_to")) {
        stage.say(line, [&](const VerbContext& context) { return verbs::saveItem(context, item); });
        return;
    }
    items::Move move{
        .date = item.since, .part = calendar::DayPart::BeforeRiding, .told = items::Told::AsItWas};
    readPlace(stage, line, "fitted_to", move);
    // What takes the place of something is put in, what nobody tracked before sat there.
    const bool isWork = stage.ask([&](const book::Book& book) {
        return book.fittings().wasTaken(
            {.machine = move.machine, .parent = move.parent, .position = move.position},
            {move.date, move.part});
    });
    if (isWork)
        move.told = items::Told::Work;
    stage.say(line, [&](const VerbContext& context) { return verbs::addItemFitted(context, item, move); });
    torqueWhatHolds(stage, line);
}

void sayMove(DemoStage& stage, DemoLine& line) {
    const std::string what = line.text("what");
    items::Move move{.item = stage.item(line, "item").value_or(ItemId{}),
                     .date = line.day("day"),
                     .part = line.word("part", calendar::DayPart::AfterRiding),
                     .note = line.text("note"),
                     .told = items::Told::Work};
    if (line.has("to"))
        readPlace(stage, line, "to", move);
    if (what == "swapped" || what == "replaced") {
        const auto old = what == "swapped" ? items::MoveKind::Removed : items::MoveKind::Retired;
        stage.say(line, [&](const VerbContext& context) { return verbs::swapItem(context, move, old); });
        torqueWhatHolds(stage, line);
        return;
    }
    move.kind = line.word("what", items::MoveKind::Fitted);
    stage.say(line, [&](const VerbContext& context) { return verbs::moveItem(context, move); });
    torqueWhatHolds(stage, line);
}

void sayOuting(DemoStage& stage, DemoLine& line) {
    const std::string wash = line.text("wash");
    if (!wash.empty() && wash != "hand" && wash != "pressure")
        line.fail(Error{Fault::Unknown, "wash", wash, "hand or pressure"});
    verbs::OutingDraft draft{.outing = {.machine = stage.machine(line, "machine"),
                                        .date = line.day("day"),
                                        .rider = stage.person(line, "rider"),
                                        .event = stage.event(line, "event"),
                                        .kind = line.word("kind", usage::OutingKind::Practice),
                                        .hours = line.hoursIf("hours"),
                                        .starts = line.count("starts"),
                                        .ground = line.word("ground", usage::Ground::Unstated),
                                        .pace = line.word("pace", usage::Pace::Unstated),
                                        .note = line.text("note")},
                             .meterAfter = line.hoursIf("meter"),
                             .washed = wash == "hand",
                             .pressureWashed = wash == "pressure",
                             .crashed = line.yes("crash")};
    stage.say(line, [&](const VerbContext& context) { return verbs::logOuting(context, draft); });
}

void sayReading(DemoStage& stage, DemoLine& line) {
    const usage::HourReading reading{.machine = stage.machine(line, "machine"),
                                     .date = line.day("day"),
                                     .shown = line.hours("shown"),
                                     .event = line.word("what", usage::MeterEvent::Plain),
                                     .before = line.hoursIf("before"),
                                     .note = line.text("note")};
    stage.say(line, [&](const VerbContext& context) { return verbs::logReading(context, reading); });
}

void sayOdometer(DemoStage& stage, DemoLine& line) {
    usage::DistanceReading reading{.machine = stage.machine(line, "machine"),
                                   .date = line.day("day"),
                                   .event = line.word("what", usage::MeterEvent::Plain),
                                   .note = line.text("note")};
    if (const auto shown = line.taken(units::parseKilometres("shown", line.text("shown"))))
        reading.shown = *shown;
    stage.say(line, [&](const VerbContext& context) { return verbs::logDistance(context, reading); });
}

void sayGone(DemoStage& stage, DemoLine& line) {
    const auto* there = stage.ledger().find<items::Machine>(stage.machine(line, "machine"));
    if (there == nullptr)
        return;
    items::Machine machine = *there;
    machine.goneOn = line.day("day");
    machine.note += (machine.note.empty() ? "" : " ") + line.text("note");
    stage.say(line, [&](const VerbContext& context) { return verbs::saveMachine(context, machine); });
}

void sayWash(DemoStage& stage, DemoLine& line) {
    const usage::Wash wash{.machine = stage.machine(line, "machine"),
                           .date = line.day("day"),
                           .pressure = line.text("wash") == "pressure",
                           .note = line.text("note")};
    stage.say(line, [&](const VerbContext& context) { return verbs::logWash(context, wash); });
}

void saySetting(DemoStage& stage, DemoLine& line) {
    const items::Setting setting{.machine = stage.machine(line, "machine"),
                                 .item = stage.item(line, "item"),
                                 .date = line.day("day"),
                                 .name = line.text("name"),
                                 .value = line.text("value"),
                                 .note = line.text("note")};
    stage.say(line, [&](const VerbContext& context) { return verbs::noteSetting(context, setting); });
}

}  // namespace wm::exchange
