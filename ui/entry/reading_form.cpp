// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/reading_form.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <algorithm>
#include <utility>

#include "ui/entry/anew.h"
#include "ui/entry/last_used.h"
#include "ui/words/figures.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

using usage::MeterEvent;

namespace {

enum class Meter : std::uint8_t { Hours, Distance };

}  // namespace

ReadingForm::ReadingForm(Workbench& workbench, const EntryRequest& request)
    : EntryForm(workbench, tr("reading")) {
    machine_ = addMachine(request.machine ? request.machine : lastMachine(book()));
    meter_ = addChoice(QStringLiteral("meter"), tr("meter"),
                       {{Meter::Hours, tr("hours")}, {Meter::Distance, tr("kilometres")}}, Meter::Hours);
    shown_ = addText(QStringLiteral("shown"), tr("it shows"), QString(), 10);
    date_ = addDay(QStringLiteral("date"), tr("day"), tr("today"), Lean::Past);
    event_ = addChoice(QStringLiteral("event"), tr("what happened"),
                       {{MeterEvent::Plain, tr("it counted on")},
                        {MeterEvent::Replaced, tr("replaced by another")},
                        {MeterEvent::Reset, tr("set back")},
                        {MeterEvent::RolledOver, tr("rolled over")},
                        {MeterEvent::Stopped, tr("stands still from here")},
                        {MeterEvent::Resumed, tr("counts again")}},
                       MeterEvent::Plain);
    before_ = addText(QStringLiteral("before"), tr("old meter ended at"), QString(), 10);
    note_ = addText(QStringLiteral("note"), tr("note"), QString(), 24);
    startAt(shown_);
    connect(machine_, &QComboBox::currentIndexChanged, this, &ReadingForm::follow);
    connect(meter_, &QComboBox::currentIndexChanged, this, &ReadingForm::follow);
    connect(event_, &QComboBox::currentIndexChanged, this, &ReadingForm::follow);
    if (request.corrects)
        fillFrom(ReadingId{*request.corrects});
    follow();
}

void ReadingForm::fillFrom(ReadingId id) {
    const auto& ledger = book().ledger();
    if (const auto* hours = ledger.find<usage::HourReading>(id)) {
        correctedHours_ = *hours;
        chooseIn(*meter_, Meter::Hours);
        fill(*hours, [](units::Hours each) { return units::hoursText(each, decimalMark()); });
    } else if (const auto* distance = ledger.find<usage::DistanceReading>(id)) {
        correctedDistance_ = *distance;
        chooseIn(*meter_, Meter::Distance);
        fill(*distance, [](units::Metres each) { return units::kilometresText(each, decimalMark()); });
    }
}

template <class Reading, class Words>
void ReadingForm::fill(const Reading& reading, const Words& words) {
    chooseIn(*machine_, reading.machine);
    shown_->setText(text(words(reading.shown)));
    date_->setText(text(reading.date.iso()));
    chooseIn(*event_, reading.event);
    if (const auto& other = reading.event == MeterEvent::RolledOver ? reading.rollsAt : reading.before)
        before_->setText(text(words(*other)));
    note_->setText(text(reading.note));
}

// The one body for both meters: they differ in their unit and their verb alone.
template <class Reading, class Parse>
Reading ReadingForm::reading(Answers& read, const std::optional<Reading>& corrected,
                             const Parse& parse) const {
    auto reading = anew(corrected);
    reading.machine = read(needMachineIn(machine_));
    reading.date = read(dayIn(date_, Lean::Past));
    reading.shown = read(parse("shown", typed(shown_)));
    reading.event = chosenOf<MeterEvent>(*event_);
    reading.before.reset();
    reading.rollsAt.reset();
    if (asksForOther() && !typed(before_).empty())
        (reading.event == MeterEvent::RolledOver ? reading.rollsAt : reading.before) =
            read(parse("before", typed(before_)));
    reading.note = typed(note_);
    return reading;
}

bool ReadingForm::asksForOther() const {
    const auto event = chosenOf<MeterEvent>(*event_);
    return event == MeterEvent::Replaced || event == MeterEvent::Reset || event == MeterEvent::RolledOver;
}

void ReadingForm::follow() {
    const auto machine = machineIn(machine_);
    const bool isHours = chosenOf<Meter>(*meter_) == Meter::Hours;
    const auto now = machine && isHours ? book().meterNow(*machine) : std::nullopt;
    shown_->setPlaceholderText(now ? tr("was %1").arg(text(units::hoursText(*now, decimalMark())))
                                   : QString());
    before_->parentWidget()->setVisible(asksForOther());
    before_->setPlaceholderText(chosenOf<MeterEvent>(*event_) == MeterEvent::RolledOver ? tr("rolls over at")
                                                                                        : QString());
}

// The meter ran on while joints were open: to be answered here, or the joints torqued first.
void ReadingForm::showFaults(const Faults& faults) {
    EntryForm::showFaults(faults);
    askOfMeter(faults);
    const auto asks = [](const base::Error& fault) { return fault.fault == base::Fault::MustAnswer; };
    if (std::none_of(faults.begin(), faults.end(), asks))
        return;
    if (seen_ == nullptr)
        seen_ = addTick(QStringLiteral("handTightSeen"), tr("ridden all the same, I know"), false);
    seen_->setFocus();
}

tl::expected<store::Verb, Faults> ReadingForm::verb() {
    Answers read;
    if (chosenOf<Meter>(*meter_) == Meter::Hours) {
        const auto hours = reading(read, correctedHours_, units::parseHours);
        const verbs::ReadingSeen seen{seen_ != nullptr && seen_->isChecked(), meterIsRight()};
        return std::move(read).answer([hours, seen](const verbs::VerbContext& context) {
            return verbs::logReadingSeen(context, hours, seen);
        });
    }
    const auto distance = reading(read, correctedDistance_, units::parseKilometres);
    return std::move(read).answer(
        [distance](const verbs::VerbContext& context) { return verbs::logDistance(context, distance); });
}

}  // namespace wm::ui
