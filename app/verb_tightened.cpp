// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/by_name.h"
#include "app/open_garage.h"
#include "app/verb.h"
#include "core/book/state.h"
#include "ui/words/state_words.h"

namespace wm::app {

namespace {

Answer<std::vector<fastening::JointMark>> readMarks(const Call& call, const book::Book& book,
                                                    MachineId machine, calendar::Date on) {
    fastening::JointMark mark{.date = on, .kind = fastening::MarkKind::Confirmed, .note = call.text("note")};
    if (call.has("tool")) {
        const auto tool = findTool(book, call.value("tool"));
        if (!tool)
            return tl::unexpected(tool.error());
        mark.tool = (*tool)->id;
    }
    if (call.has("by")) {
        const auto person = findPerson(book, call.value("by"));
        if (!person)
            return tl::unexpected(person.error());
        mark.by = (*person)->id;
    }
    std::vector<fastening::JointMark> marks;
    for (const QString& words : call.values("joint")) {
        const auto joint = findJoint(book, machine, words);
        if (!joint)
            return tl::unexpected(joint.error());
        mark.joint = (*joint)->joint;
        marks.push_back(mark);
    }
    return marks;
}

void printLeft(const Call& call, const book::Book& book, MachineId machine) {
    const book::State state = book::stateOf(book, machine);
    auto& out = call.console().out;
    for (const book::OpenJoint& open : state.handTight)
        out << "Hand-tight: " << fromUtf8(open.joint->name) << ".\n";
    if (!state.out.empty())
        out << ui::outWords(state.out) << ".\n";
    for (const book::Doubt& doubt : state.doubts)
        out << "In doubt: " << ui::inDoubtWords(book, doubt) << ".\n";
}

Answer<void> runTightened(const Call& call) {
    if (!call.has("joint"))
        return fail(Exit::Usage, "Say with --joint what was torqued and marked; again for more.");
    const auto day = call.day("on");
    if (!day)
        return tl::unexpected(day.error());
    auto garage = Garage::open(call, store::OpenFor::Writing);
    if (!garage)
        return tl::unexpected(garage.error());
    const auto machine = findMachine(garage->book(), call.value("machine"));
    if (!machine)
        return tl::unexpected(machine.error());
    const MachineId id = (*machine)->id;
    const auto marks = readMarks(call, garage->book(), id, day->value_or(garage->today()));
    if (!marks)
        return tl::unexpected(marks.error());
    const auto change = garage->apply(
        [&marks](const verbs::VerbContext& context) { return verbs::markJoints(context, *marks); });
    if (!change)
        return tl::unexpected(change.error());
    reportWritten(call, *change);
    if (!call.has("json"))
        printLeft(call, garage->book(), id);
    return {};
}

}  // namespace

VerbSpec tightenedVerb() {
    return {"tightened",
            "Say that joints were torqued and marked, without a job.",
            {{"FILE", "The file."}},
            {machineOption(),
             onOption("The day of it, 2026-05-16; otherwise today."),
             {"joint", "The joint, by its name or code or a part of it. Again for more.", "name"},
             {"tool", "The torque tool that they were torqued with, by its name in the drawer.", "name"},
             {"by", "Who did it.", "name"},
             {"note", "A note.", "text"},
             jsonOption()},
            "  witnessmark tightened garage.witnessmark --machine \"Heron 250\" --joint \"rear axle nut\"\n",
            runTightened};
}

}  // namespace wm::app
