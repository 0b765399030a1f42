// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/outing_form.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <algorithm>
#include <utility>

#include "core/book/state.h"
#include "core/picture/checks.h"
#include "core/picture/facts.h"
#include "core/verbs/together.h"
#include "ui/entry/anew.h"
#include "ui/entry/last_used.h"
#include "ui/words/figures.h"
#include "ui/words/state_words.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

using usage::Ground;
using usage::OutingKind;
using usage::Pace;

namespace {

enum class Washed : std::uint8_t { Not, ByHand, ByPressure };

const QString kNobodyNoted = QStringLiteral("?");
constexpr const char* kHoursAsked = QT_TR_NOOP("12.5, or ? if nobody noted them");

store::Verb tightenThenLog(const QString& words, std::vector<fastening::JointMark> marks, store::Verb log) {
    const auto tighten = [marks = std::move(marks)](const verbs::VerbContext& context) {
        return verbs::markJoints(context, marks);
    };
    return verbs::together(words.toStdString(), {tighten, std::move(log)});
}

}  // namespace

OutingForm::OutingForm(Workbench& workbench, const EntryRequest& request)
    : EntryForm(workbench, tr("outing")) {
    machine_ = addMachine(request.machine ? request.machine : lastMachine(book()));
    date_ = addDay(QStringLiteral("date"), tr("day"), tr("today"), Lean::Past);
    hours_ = addText(QStringLiteral("hours"), tr("hours ridden"), QString(), 6);
    hours_->setToolTip(tr("Hours as noted, or ? if nobody noted them."));
    meter_ = addText(QStringLiteral("meter"), tr("meter after"), QString(), 8);
    kind_ = addChoice(QStringLiteral("kind"), tr("what"),
                      {{OutingKind::Practice, tr("practice")},
                       {OutingKind::Race, tr("race")},
                       {OutingKind::Other, tr("other")}},
                      OutingKind::Practice);
    for (const usage::PieceTraits& piece : usage::kPieces)
        if (const auto counter = upkeep::counterOf(piece.of); piece.noted && counter)
            counts_.emplace_back(*piece.noted, addText(text(std::string(piece.noted->field)),
                                                       counterWords(*counter), QString(), 3));
    ground_ = addChoice(QStringLiteral("ground"), tr("ground"),
                        {{Ground::Unstated, tr("not said")},
                         {Ground::Hard, tr("hard")},
                         {Ground::Dust, tr("dust")},
                         {Ground::Sand, tr("sand")},
                         {Ground::Mud, tr("mud")},
                         {Ground::Water, tr("water")}},
                        Ground::Unstated);
    pace_ = addChoice(QStringLiteral("pace"), tr("pace"),
                      {{Pace::Unstated, tr("not said")},
                       {Pace::Race, tr("race")},
                       {Pace::Hard, tr("hard")},
                       {Pace::Easy, tr("easy")}},
                      Pace::Unstated);
    wash_ = addChoice(QStringLiteral("wash"), tr("wash after"),
                      {{Washed::Not, tr("none")},
                       {Washed::ByHand, tr("by hand")},
                       {Washed::ByPressure, tr("pressure washer")}},
                      Washed::Not);
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
        if (const auto* outing = book().ledger().find<usage::Outing>(OutingId{*request.corrects})) {
            corrected_ = *outing;
            fill(*outing);
        }
}

void OutingForm::fill(const usage::Outing& outing) {
    chooseIn(*machine_, outing.machine);
    chooseIn(*machine_, outing.machine);
    date_->setText(text(outing.date.iso()));
    hours_->setText(outing.hours ? text(units::hoursText(*outing.hours, decimalMark())) : kNobodyNoted);
    chooseIn(*kind_, outing.kind);
    kindWasChosen_ = true;
    for (const auto& [noted, field] : counts_)
        if (const std::int64_t count = outing.*noted.amount; count > 0)
            field->setText(QString::number(count));
        else
            field->clear();
    chooseIn(*ground_, outing.ground);
    chooseIn(*pace_, outing.pace);
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
            chooseIn(*wash_, wash.pressure ? Washed::ByPressure : Washed::ByHand);
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
    for (QLabel** caption : {&gaps_, &doubts_})
        if (*caption != nullptr)
            remove(std::exchange(*caption, nullptr));
    const auto state = book::stateOf(book(), *machine);
    if (state.isWhole())
        return;
    if (!state.gaps.empty()) {
        gaps_ = addCaption(tr("not fitted: %1").arg(gapWords(book(), state.gaps)));
        gaps_->setObjectName(QStringLiteral("not-fitted"));
    }
    if (!state.handTight.empty()) {
        open_ = addCaption(tr("hand-tight; tick what was torqued and marked first:"));
        open_->setObjectName(QStringLiteral("hand-tight-question"));
    }
    if (!state.doubts.empty()) {
        QStringList all;
        for (const book::Doubt& doubt : state.doubts)
            all << inDoubtWords(book(), doubt);
        doubts_ = addCaption(tr("in doubt: %1").arg(all.join(QStringLiteral("; "))));
        doubts_->setObjectName(QStringLiteral("doubt-question"));
    }
    for (const auto& joint : state.handTight)
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
        chooseIn(*kind_, event->kind == outlook::EventKind::Race ? OutingKind::Race : OutingKind::Practice);
}

// An outing of unknown length is paid for with hours of every job, so nobody enters one by leaving the field
// blank.
base::Result<std::optional<units::Hours>> OutingForm::riddenHours() const {
    const QString said = hours_->text().trimmed();
    if (said == kNobodyNoted || said.compare(tr("unknown"), Qt::CaseInsensitive) == 0)
        return std::optional<units::Hours>();
    if (said.isEmpty() && meter_->text().trimmed().isEmpty())
        return base::refuse(base::Fault::Empty, "hours", {}, kHoursAsked);
    return hoursIn(hours_);
}

tl::expected<store::Verb, Faults> OutingForm::verb() {
    Answers read;
    verbs::OutingDraft draft;
    auto& outing = draft.outing;
    // What has no field here (a distance, the event) stays as it was noted.
    outing = anew(corrected_);
    outing.machine = read(needMachineIn(machine_));
    outing.date = read(dayIn(date_, Lean::Past));
    outing.hours = read(riddenHours());
    draft.meterAfter = read(hoursIn(meter_));
    outing.kind = chosenOf<OutingKind>(*kind_);
    for (const auto& [noted, field] : counts_)
        outing.*noted.amount = read(countIn(field, picture::kMostOfADay));
    outing.ground = chosenOf<Ground>(*ground_);
    outing.pace = chosenOf<Pace>(*pace_);
    outing.rider = read(personIn(rider_));
    outing.note = typed(note_);
    draft.washed = chosenOf<Washed>(*wash_) != Washed::Not;
    draft.pressureWashed = chosenOf<Washed>(*wash_) == Washed::ByPressure;
    draft.crashed = crash_->isChecked();
    draft.handTightSeen = seen_ != nullptr && seen_->isChecked();
    draft.meterIsRight = meterIsRight();
    const bool isMoved =
        !corrected_ || corrected_->machine != outing.machine || corrected_->date != outing.date;
    if (read.isFine() && isMoved) {
        outing.event = std::nullopt;
        if (const auto* event = picture::eventOn(book().ledger(), outing.machine, outing.date))
            outing.event = event->id;
    }
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
    store::Verb log = [draft](const verbs::VerbContext& context) { return verbs::logOuting(context, draft); };
    if (!marks.empty())
        log = tightenThenLog(tr("outing on %1, joints torqued").arg(machine_->currentText()),
                             std::move(marks), std::move(log));
    return std::move(read).answer(std::move(log));
}

void OutingForm::showFaults(const Faults& faults) {
    EntryForm::showFaults(faults);
    askOfMeter(faults);
    const auto asks = [](const base::Error& fault) { return fault.fault == base::Fault::MustAnswer; };
    if (std::none_of(faults.begin(), faults.end(), asks))
        return;
    if (!tightened_.empty())
        tightened_.front().second->setFocus();
    else if (seen_ != nullptr)
        seen_->setFocus();
}

}  // namespace wm::ui
