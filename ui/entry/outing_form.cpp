// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/outing_form.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <algorithm>
#include <utility>

#include "core/picture/checks.h"
#include "core/picture/facts.h"
#include "core/verbs/together.h"
#include "ui/entry/last_used.h"
#include "ui/words/figures.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

store::Verb tightenThenLog(const QString& words, std::vector<fastening::JointMark> marks, store::Verb log) {
    const auto tighten = [marks = std::move(marks)](const verbs::Pen& pen) {
        return verbs::markJoints(pen, marks);
    };
    return verbs::together(words.toStdString(), {tighten, std::move(log)});
}

}  // namespace

OutingForm::OutingForm(Workbench& workbench, const EntryRequest& request)
    : EntryForm(workbench, tr("outing")) {
    machine_ = addMachine(request.machine ? request.machine : lastMachine(book()));
    date_ = addDay(QStringLiteral("date"), tr("day"), tr("today"), Lean::Past);
    hours_ = addText(QStringLiteral("hours"), tr("hours ridden"), QString(), 6);
    meter_ = addText(QStringLiteral("meter"), tr("meter after"), QString(), 8);
    kind_ = addChoice(QStringLiteral("kind"), tr("what"), {tr("practice"), tr("race"), tr("other")}, 0);
    starts_ = addText(QStringLiteral("starts"), tr("starts"), QString(), 3);
    ground_ = addChoice(QStringLiteral("ground"), tr("ground"),
                        {tr("not said"), tr("hard"), tr("dust"), tr("sand"), tr("mud"), tr("water")}, 0);
    pace_ = addChoice(QStringLiteral("pace"), tr("pace"),
                      {tr("not said"), tr("race"), tr("hard"), tr("easy")}, 0);
    wash_ = addChoice(QStringLiteral("wash"), tr("wash after"),
                      {tr("none"), tr("by hand"), tr("pressure washer")}, 0);
    rider_ = addPerson(QStringLiteral("rider"), tr("rider"), std::nullopt);
    crash_ = addTick(QStringLiteral("crash"), tr("crashed"), false);
    note_ = addText(QStringLiteral("note"), tr("note"), QString(), 18);
    startAt(hours_);
    connect(machine_, &QComboBox::currentIndexChanged, this, &OutingForm::followMachine);
    connect(date_, &QLineEdit::textChanged, this, &OutingForm::followDay);
    connect(kind_, &QComboBox::activated, this, [this] { kindWasChosen_ = true; });
    followMachine();
    followDay();
    if (request.corrects)
        if (const auto* outing = book().ledger().find<usage::Outing>(OutingId{*request.corrects}))
            fill(*outing);
}

void OutingForm::fill(const usage::Outing& outing) {
    machine_->setCurrentIndex(machine_->findData(QVariant::fromValue<qlonglong>(outing.machine.value())));
    date_->setText(text(outing.date.iso()));
    if (outing.hours)
        hours_->setText(text(units::hoursText(*outing.hours, decimalMark())));
    kind_->setCurrentIndex(static_cast<int>(outing.kind));
    starts_->setText(outing.starts > 0 ? QString::number(outing.starts) : QString());
    ground_->setCurrentIndex(static_cast<int>(outing.ground));
    pace_->setCurrentIndex(static_cast<int>(outing.pace));
    note_->setText(text(outing.note));
    if (outing.rider)
        if (const auto* person = book().ledger().find<items::Person>(*outing.rider))
            rider_->setText(text(person->name));
    const auto& ledger = book().ledger();
    for (const auto& reading : ledger.all<usage::HourReading>())
        if (reading.outing == outing.id)
            meter_->setText(text(units::hoursText(reading.shown, decimalMark())));
    for (const auto& wash : ledger.all<usage::Wash>())
        if (wash.outing == outing.id)
            wash_->setCurrentIndex(wash.pressure ? 2 : 1);
    for (const auto& crash : ledger.all<usage::Crash>())
        if (crash.outing == outing.id)
            crash_->setChecked(true);
}

void OutingForm::followMachine() {
    const auto machine = machineIn(machine_);
    if (!machine)
        return;
    const auto shown = book().meterNow(*machine);
    meter_->setPlaceholderText(shown ? tr("was %1").arg(text(units::hoursText(*shown, decimalMark())))
                                     : QString());
    const auto rider = lastRider(book(), *machine);
    const auto* person = rider ? book().ledger().find<items::Person>(*rider) : nullptr;
    if (person != nullptr && !rider_->isModified())
        rider_->setText(text(person->name));
    for (const auto& [joint, tick] : std::exchange(tightened_, {}))
        remove(tick);
    if (seen_ != nullptr)
        remove(std::exchange(seen_, nullptr));
    if (open_ != nullptr)
        remove(std::exchange(open_, nullptr));
    const auto open = book().handTight(*machine);
    if (open.empty())
        return;
    open_ = addCaption(tr("hand-tight; tick what was torqued and marked first:"));
    open_->setObjectName(QStringLiteral("hand-tight-question"));
    for (const auto& joint : open)
        tightened_.emplace_back(joint.state.joint,
                                addTick(QStringLiteral("joint"), text(joint.joint->name), false));
    seen_ = addTick(QStringLiteral("handTightSeen"), tr("ridden all the same, I know"), false);
}

void OutingForm::followDay() {
    const auto machine = machineIn(machine_);
    const auto day = dayIn(date_, Lean::Past);
    if (!machine || !day || kindWasChosen_)
        return;
    const auto* event = picture::eventOn(book().ledger(), *machine, *day);
    if (event != nullptr)
        kind_->setCurrentIndex(event->kind == outlook::EventKind::Race ? 1 : 0);
}

tl::expected<store::Verb, Faults> OutingForm::verb() {
    Answers read;
    verbs::OutingDraft draft;
    auto& outing = draft.outing;
    outing.machine = read(needMachineIn(machine_));
    outing.date = read(dayIn(date_, Lean::Past));
    outing.hours = read(hoursIn(hours_));
    draft.meterAfter = read(hoursIn(meter_));
    outing.kind = static_cast<usage::OutingKind>(kind_->currentIndex());
    outing.starts = read(countIn(starts_, picture::kMostOfADay));
    outing.ground = static_cast<usage::Ground>(ground_->currentIndex());
    outing.pace = static_cast<usage::Pace>(pace_->currentIndex());
    outing.rider = read(personIn(rider_));
    outing.note = typed(note_);
    draft.washed = wash_->currentIndex() > 0;
    draft.pressureWashed = wash_->currentIndex() == 2;
    draft.crashed = crash_->isChecked();
    draft.handTightSeen = seen_ != nullptr && seen_->isChecked();
    if (read.isFine())
        if (const auto* event = picture::eventOn(book().ledger(), outing.machine, outing.date))
            outing.event = event->id;
    std::vector<fastening::JointMark> marks;
    for (const auto& [joint, tick] : tightened_) {
        if (!tick->isChecked())
            continue;
        fastening::JointMark mark;
        mark.joint = joint;
        mark.date = outing.date;
        mark.kind = fastening::MarkKind::Confirmed;
        marks.push_back(mark);
    }
    store::Verb log = [draft](const verbs::Pen& pen) { return verbs::logOuting(pen, draft); };
    if (!marks.empty())
        log = tightenThenLog(tr("outing on %1, joints torqued").arg(machine_->currentText()),
                             std::move(marks), std::move(log));
    return std::move(read).answer(std::move(log));
}

void OutingForm::showFaults(const Faults& faults) {
    EntryForm::showFaults(faults);
    const auto asks = [](const base::Error& fault) { return fault.fault == base::Fault::MustAnswer; };
    if (std::any_of(faults.begin(), faults.end(), asks) && !tightened_.empty())
        tightened_.front().second->setFocus();
}

}  // namespace wm::ui
