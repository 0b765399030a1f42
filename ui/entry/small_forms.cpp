// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/small_forms.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <utility>

#include "ui/entry/anew.h"
#include "ui/entry/last_used.h"
#include "ui/words/figures.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

using upkeep::Consequence;
using upkeep::SnagWish;

namespace {

std::optional<MachineId> machineFor(const book::Book& book, const EntryRequest& request) {
    return request.machine ? request.machine : lastMachine(book);
}

// Whether a wash was with pressure.
constexpr bool kByHand = false;
constexpr bool kByPressure = true;

const QString kNote = QStringLiteral("note");
const QString kDate = QStringLiteral("date");

}  // namespace

SnagForm::SnagForm(Workbench& workbench, const EntryRequest& request) : EntryForm(workbench, tr("snag")) {
    machine_ = addMachine(machineFor(book(), request));
    what_ = addText(QStringLiteral("what"), tr("what was found"), QString(), 40);
    date_ = addDay(kDate, tr("day"), tr("today"), Lean::Past);
    wish_ =
        addChoice(QStringLiteral("wish"), tr("then"),
                  {{SnagWish::DoIt, tr("put it right")}, {SnagWish::Watch, tr("watch it")}}, SnagWish::DoIt);
    consequence_ = addChoice(QStringLiteral("consequence"), tr("if left"),
                             eachOf<Consequence>(consequenceWords), Consequence::CostsMoney);
    startAt(what_);
    if (!request.corrects)
        return;
    if (const auto* snag = book().ledger().find<upkeep::Snag>(SnagId{*request.corrects})) {
        corrected_ = *snag;
        chooseIn(*machine_, snag->machine);
        what_->setText(text(snag->what));
        date_->setText(text(snag->date.iso()));
        chooseIn(*wish_, snag->wish);
        chooseIn(*consequence_, snag->consequence);
    }
}

tl::expected<store::Verb, Faults> SnagForm::verb() {
    Answers read;
    auto snag = anew(corrected_);
    snag.machine = read(needMachineIn(machine_));
    snag.what = typed(what_);
    snag.date = read(dayIn(date_, Lean::Past));
    snag.wish = chosenOf<SnagWish>(*wish_);
    snag.consequence = chosenOf<Consequence>(*consequence_);
    return std::move(read).answer(
        [snag](const verbs::VerbContext& context) { return verbs::addSnag(context, snag); });
}

WashForm::WashForm(Workbench& workbench, const EntryRequest& request) : EntryForm(workbench, tr("wash")) {
    machine_ = addMachine(machineFor(book(), request));
    date_ = addDay(kDate, tr("day"), tr("today"), Lean::Past);
    how_ = addChoice(QStringLiteral("pressure"), tr("how"),
                     {{kByHand, tr("by hand")}, {kByPressure, tr("pressure washer")}}, kByHand);
    note_ = addText(kNote, tr("note"), QString(), 30);
    startAt(how_);
    if (!request.corrects)
        return;
    if (const auto* wash = book().ledger().find<usage::Wash>(WashId{*request.corrects})) {
        corrected_ = *wash;
        chooseIn(*machine_, wash->machine);
        date_->setText(text(wash->date.iso()));
        chooseIn(*how_, wash->pressure);
        note_->setText(text(wash->note));
    }
}

tl::expected<store::Verb, Faults> WashForm::verb() {
    Answers read;
    auto wash = anew(corrected_);
    wash.machine = read(needMachineIn(machine_));
    wash.date = read(dayIn(date_, Lean::Past));
    wash.pressure = chosenOf<bool>(*how_);
    wash.note = typed(note_);
    return std::move(read).answer(
        [wash](const verbs::VerbContext& context) { return verbs::logWash(context, wash); });
}

CrashForm::CrashForm(Workbench& workbench, const EntryRequest& request) : EntryForm(workbench, tr("crash")) {
    machine_ = addMachine(machineFor(book(), request));
    date_ = addDay(kDate, tr("day"), tr("today"), Lean::Past);
    note_ = addText(kNote, tr("what was hit or bent"), QString(), 40);
    startAt(note_);
    if (!request.corrects)
        return;
    if (const auto* crash = book().ledger().find<usage::Crash>(CrashId{*request.corrects})) {
        corrected_ = *crash;
        chooseIn(*machine_, crash->machine);
        date_->setText(text(crash->date.iso()));
        note_->setText(text(crash->note));
    }
}

tl::expected<store::Verb, Faults> CrashForm::verb() {
    Answers read;
    auto crash = anew(corrected_);
    crash.machine = read(needMachineIn(machine_));
    crash.date = read(dayIn(date_, Lean::Past));
    crash.note = typed(note_);
    return std::move(read).answer(
        [crash](const verbs::VerbContext& context) { return verbs::logCrash(context, crash); });
}

PutOffForm::PutOffForm(Workbench& workbench, const EntryRequest& request)
    : EntryForm(workbench, tr("put off")), request_(request) {
    until_ = addDay(QStringLiteral("until"), tr("until"), QString(), Lean::Future);
    hours_ = addText(QStringLiteral("hours"), tr("or until machine hours"), QString(), 8);
    reason_ = addText(QStringLiteral("reason"), tr("why"), QString(), 36);
    by_ = addPerson(QStringLiteral("by"), tr("by"), lastMechanic(book()));
    if (request.task)
        if (const auto* task = book().task(*request.task)) {
            addNote(upkeep::isSafety(task->consequence)
                        ? tr("%1. A safety job: it needs a reason and an end, and comes back by itself.")
                              .arg(text(task->name))
                        : tr("%1. It comes back by itself.").arg(text(task->name)));
            request_.machine = task->machine;
        }
    if (request.snag)
        if (const auto* snag = book().ledger().find<upkeep::Snag>(*request.snag)) {
            addNote(tr("%1. It comes back by itself.").arg(text(snag->what)));
            request_.machine = snag->machine;
        }
}

tl::expected<store::Verb, Faults> PutOffForm::verb() {
    Answers read;
    upkeep::Deferral deferral;
    deferral.machine = request_.machine.value_or(MachineId{});
    deferral.task = request_.task;
    deferral.snag = request_.snag;
    deferral.date = book().today();
    deferral.untilDate = read(dayOrNothingIn(until_, Lean::Future));
    deferral.untilHours = read(hoursIn(hours_));
    deferral.reason = typed(reason_);
    deferral.by = read(personIn(by_));
    return std::move(read).answer(
        [deferral](const verbs::VerbContext& context) { return verbs::defer(context, deferral); });
}

EndSnagForm::EndSnagForm(Workbench& workbench, const EntryRequest& request)
    : EntryForm(workbench, tr("snag over")), snag_(request.snag.value_or(SnagId{})) {
    date_ = addDay(kDate, tr("day"), tr("today"), Lean::Past);
    how_ = addText(QStringLiteral("how"), tr("how it ended"), QString(), 40);
    startAt(how_);
    if (const auto* snag = book().ledger().find<upkeep::Snag>(snag_))
        addNote(text(snag->what));
}

tl::expected<store::Verb, Faults> EndSnagForm::verb() {
    Answers read;
    upkeep::SnagEnd end;
    end.snag = snag_;
    end.date = read(dayIn(date_, Lean::Past));
    end.how = typed(how_);
    return std::move(read).answer(
        [end](const verbs::VerbContext& context) { return verbs::endSnag(context, end); });
}

namespace {

// Of a sheet that went out people say that it is void; an entry is struck.
bool isSheet(Workbench& workbench, const EntryRequest& request) {
    return workbench.book()->ledger().find<weekend::IssuedSheet>(SheetId(request.fact.value_or(0))) !=
           nullptr;
}

}  // namespace

StrikeForm::StrikeForm(Workbench& workbench, const EntryRequest& request)
    : EntryForm(workbench, isSheet(workbench, request) ? tr("make void") : tr("strike")),
      fact_(request.fact.value_or(0)) {
    const bool isVoid = isSheet(workbench, request);
    reason_ = addText(QStringLiteral("reason"),
                      isVoid ? tr("why it is void (needed)") : tr("why it is wrong (needed)"), QString(), 50);
    addNote(isVoid
                ? tr("A sheet that went out keeps its number and stays readable; nothing is noted from it.")
                : tr("The entry stays readable, struck through; no figure counts it any longer."));
}

tl::expected<store::Verb, Faults> StrikeForm::verb() {
    return Answers().answer([fact = fact_, reason = typed(reason_)](const verbs::VerbContext& context) {
        return verbs::strike(context, fact, reason);
    });
}

PersonForm::PersonForm(Workbench& workbench) : EntryForm(workbench, tr("person")) {
    name_ = addText(QStringLiteral("name"), tr("name"), QString(), 24);
    addNote(tr("Somebody who rides or works on a machine of this file."));
}

tl::expected<store::Verb, Faults> PersonForm::verb() {
    items::Person person;
    person.name = typed(name_);
    return Answers().answer(
        [person](const verbs::VerbContext& context) { return verbs::savePerson(context, person); });
}

}  // namespace wm::ui
