// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QComboBox>
#include <QLineEdit>
#include <utility>

#include "ui/entry/last_used.h"
#include "ui/entry/small_forms.h"
#include "ui/words/figures.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

using usage::MeterEvent;

namespace {

enum class Meter : std::uint8_t { Hours, Distance };

// The one body for both meters: they differ in their unit and their verb alone.
template <class Unit>
usage::ReadingOf<Unit> readingOf(MachineId machine, calendar::Date date, Unit shown,
                                 std::optional<Unit> other, usage::MeterEvent event,
                                 const std::string& note) {
    usage::ReadingOf<Unit> reading;
    reading.machine = machine;
    reading.date = date;
    reading.shown = shown;
    reading.event = event;
    if (event == MeterEvent::RolledOver)
        reading.rollsAt = other;
    else
        reading.before = other;
    reading.note = note;
    return reading;
}

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
        if (const auto* reading = book().ledger().find<usage::HourReading>(ReadingId{*request.corrects})) {
            chooseIn(*machine_, reading->machine);
            shown_->setText(text(units::hoursText(reading->shown, decimalMark())));
            date_->setText(text(reading->date.iso()));
            chooseIn(*event_, reading->event);
            note_->setText(text(reading->note));
        }
    follow();
}

void ReadingForm::follow() {
    const auto machine = machineIn(machine_);
    const bool isHours = chosenOf<Meter>(*meter_) == Meter::Hours;
    const auto now = machine && isHours ? book().meterNow(*machine) : std::nullopt;
    shown_->setPlaceholderText(now ? tr("was %1").arg(text(units::hoursText(*now, decimalMark())))
                                   : QString());
    const auto event = chosenOf<MeterEvent>(*event_);
    const bool asks =
        event == MeterEvent::Replaced || event == MeterEvent::Reset || event == MeterEvent::RolledOver;
    before_->parentWidget()->setVisible(asks);
    before_->setPlaceholderText(event == MeterEvent::RolledOver ? tr("rolls over at") : QString());
}

tl::expected<store::Verb, Faults> ReadingForm::verb() {
    Answers read;
    const auto machine = read(needMachineIn(machine_));
    const auto date = read(dayIn(date_, Lean::Past));
    const auto event = chosenOf<MeterEvent>(*event_);
    const bool asks = before_->isVisibleTo(this) && !typed(before_).empty();
    if (chosenOf<Meter>(*meter_) == Meter::Hours) {
        const auto shown = read(units::parseHours("shown", typed(shown_)));
        const auto other =
            asks ? std::optional(read(units::parseHours("before", typed(before_)))) : std::nullopt;
        const auto reading = readingOf(machine, date, shown, other, event, typed(note_));
        return std::move(read).answer(
            [reading](const verbs::VerbContext& context) { return verbs::logReading(context, reading); });
    }
    const auto shown = read(units::parseKilometres("shown", typed(shown_)));
    const auto other =
        asks ? std::optional(read(units::parseKilometres("before", typed(before_)))) : std::nullopt;
    const auto reading = readingOf(machine, date, shown, other, event, typed(note_));
    return std::move(read).answer(
        [reading](const verbs::VerbContext& context) { return verbs::logDistance(context, reading); });
}

}  // namespace wm::ui
