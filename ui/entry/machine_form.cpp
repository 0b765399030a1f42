// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/machine_form.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <algorithm>
#include <utility>

#include "core/verbs/together.h"
#include "ui/words/figures.h"
#include "ui/words/name_words.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

using usage::MeterCounts;

namespace {

constexpr std::int64_t kLastYear = 2199;
constexpr auto kCommonest = "four-stroke motocross";

std::optional<MachineId> idOfMachineNamed(const book::Book& book, const std::string& name) {
    for (const auto* machine : book.machines())
        if (machine->name == name)
            return machine->id;
    return std::nullopt;
}

store::Verb firstReading(const std::string& machine, units::Hours shown) {
    return [machine, shown](const verbs::VerbContext& context) -> base::Result<picture::Change> {
        usage::HourReading reading;
        reading.machine = idOfMachineNamed(context.book, machine).value_or(MachineId{});
        reading.date = context.book.today();
        reading.shown = shown;
        return verbs::logReading(context, reading);
    };
}

}  // namespace

MachineForm::MachineForm(Workbench& workbench) : EntryForm(workbench, tr("machine")), starters_(starters()) {
    name_ = addText(QStringLiteral("name"), tr("what you call it"), QString(), 14);
    // What a machine can't do without stands first, so that Tab and Enter suffice.
    starter_ = addBox(QStringLiteral("starter"), tr("begin with the schedule"));
    starter_->addItem(tr("none"));
    meter_ = addText(QStringLiteral("shown"), tr("meter shows now"), QString(), 7);
    counts_ = addChoice(QStringLiteral("meterCounts"), tr("it counts"),
                        {{MeterCounts::Riding, tr("riding")}, {MeterCounts::TransportToo, tr("the van too")}},
                        MeterCounts::Riding);
    past_ = addChoice(QStringLiteral("startedNew"), tr("it came"),
                      {{Past::New, tr("new")}, {Past::Used, tr("used")}}, Past::Used);
    best_ = addText(QStringLiteral("pastBest"), tr("likely hours before"), QString(), 7);
    low_ = addText(QStringLiteral("pastLow"), tr("at least"), QString(), 7);
    high_ = addText(QStringLiteral("pastHigh"), tr("at most, if known"), QString(), 7);
    since_ = addDay(QStringLiteral("since"), tr("yours since"), tr("today"), Lean::Past);
    maker_ = addText(QStringLiteral("maker"), tr("maker"), QString(), 12);
    model_ = addText(QStringLiteral("model"), tr("model"), QString(), 12);
    year_ = addText(QStringLiteral("year"), tr("year"), QString(), 5);
    for (const exchange::Starter& each : starters_)
        starter_->addItem(nameWords(std::string_view(each.name)), text(each.name));
    if (starter_->findData(QLatin1String(kCommonest)) >= 0)
        chooseIn(*starter_, QString(QLatin1String(kCommonest)));
    addNote(tr(
        "A schedule brings common-practice intervals, not confirmed, and no torque: yours to check "
        "against the manual. Used, and nobody is sure of the hours? Leave them blank and weigh what you see "
        "afterwards: File, A used machine."));
    connect(past_, &QComboBox::currentIndexChanged, this, &MachineForm::followPast);
    followPast();
}

void MachineForm::followPast() {
    for (auto* field : {best_, low_, high_})
        field->parentWidget()->setVisible(chosenOf<Past>(*past_) == Past::Used);
}

items::Machine MachineForm::machine(Answers& read) const {
    items::Machine machine;
    machine.name = typed(name_);
    machine.maker = typed(maker_);
    machine.model = typed(model_);
    if (!typed(year_).empty())
        machine.year = read(countIn(year_, kLastYear));
    machine.since = read(dayIn(since_, Lean::Past));
    machine.startedNew = chosenOf<Past>(*past_) == Past::New;
    machine.meterCountsTransport = chosenOf<MeterCounts>(*counts_) == MeterCounts::TransportToo;
    if (machine.startedNew) {
        machine.pastHigh = units::Hours{};
        return machine;
    }
    const auto best = read(hoursIn(best_));
    machine.pastLow = read(hoursIn(low_)).value_or(units::Hours{});
    machine.pastBest = best.value_or(machine.pastLow);
    machine.pastHigh = read(hoursIn(high_));
    return machine;
}

tl::expected<store::Verb, Faults> MachineForm::verb() {
    Answers read;
    auto machine = this->machine(read);
    const auto shown = read(hoursIn(meter_));
    // A meter that was there for an unknown time says the least of what is behind a machine that came today.
    const bool saidNothing = typed(best_).empty() && typed(low_).empty() && typed(high_).empty();
    if (shown && saidNothing && !machine.startedNew && !machine.meterCountsTransport &&
        machine.since == workbench().today())
        machine.pastLow = machine.pastBest = *shown;
    std::vector<store::Verb> verbs;
    const auto starter = std::find_if(starters_.begin(), starters_.end(), [this](const auto& each) {
        return text(each.name) == starter_->currentData().toString();
    });
    const bool begins = starter != starters_.end();
    if (begins)
        machine.starter = starter->name;
    verbs.emplace_back(
        [machine](const verbs::VerbContext& context) { return verbs::saveMachine(context, machine); });
    if (shown)
        verbs.push_back(firstReading(machine.name, *shown));
    if (begins)
        verbs.push_back(adoptStarter(machine.name, *starter));
    return std::move(read).answer(
        verbs::together(tr("add %1").arg(text(machine.name)).toStdString(), std::move(verbs)));
}

}  // namespace wm::ui
