// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/machine_form.h"

#include <QComboBox>
#include <QDir>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <utility>

#include "core/exchange/starter.h"
#include "ui/entry/together.h"
#include "ui/words/figures.h"
#include "ui/workbench.h"

namespace wm::ui {

namespace {

constexpr std::int64_t kLastYear = 2199;
constexpr auto kStarters = ":/starters";
constexpr auto kCommonest = "four-stroke-motocross.json";

std::optional<MachineId> machineNamed(const ledger::Book& book, const std::string& name) {
    for (const auto* machine : book.machines())
        if (machine->name == name)
            return machine->id;
    return std::nullopt;
}

std::string readResource(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll().toStdString() : std::string();
}

store::Verb firstReading(const std::string& machine, units::Hours shown) {
    return [machine, shown](const ledger::Pen& pen) -> base::Result<ledger::Change> {
        usage::HourReading reading;
        reading.machine = machineNamed(pen.book, machine).value_or(MachineId{});
        reading.date = pen.book.today();
        reading.shown = shown;
        return ledger::logReading(pen, reading);
    };
}

store::Verb adopt(const std::string& machine, exchange::Starter starter) {
    return [machine, starter = std::move(starter)](const ledger::Pen& pen) -> base::Result<ledger::Change> {
        const auto id = machineNamed(pen.book, machine);
        if (!id)
            return base::refuse(base::Fault::Unknown, "machine", machine);
        return ledger::adoptSchedule(pen, *id, starter.name, starter.steps, starter.joints, starter.tasks);
    };
}

}  // namespace

MachineForm::MachineForm(Workbench& workbench) : EntryForm(workbench, tr("machine")) {
    name_ = addText(QStringLiteral("name"), tr("what you call it"), QString(), 14);
    // What a machine can't do without stands first, so that Tab and Enter suffice.
    starter_ = addChoice(QStringLiteral("starter"), tr("begin with the schedule"), {tr("none")}, 0);
    meter_ = addText(QStringLiteral("shown"), tr("meter shows now"), QString(), 7);
    counts_ = addChoice(QStringLiteral("meterCounts"), tr("it counts"), {tr("riding"), tr("the van too")}, 0);
    past_ = addChoice(QStringLiteral("startedNew"), tr("it came"), {tr("new"), tr("used")}, 1);
    best_ = addText(QStringLiteral("pastBest"), tr("likely hours before"), QString(), 7);
    low_ = addText(QStringLiteral("pastLow"), tr("at least"), QString(), 7);
    high_ = addText(QStringLiteral("pastHigh"), tr("at most, if known"), QString(), 7);
    since_ = addDay(QStringLiteral("since"), tr("yours since"), tr("today"), Lean::Past);
    maker_ = addText(QStringLiteral("maker"), tr("maker"), QString(), 12);
    model_ = addText(QStringLiteral("model"), tr("model"), QString(), 12);
    year_ = addText(QStringLiteral("year"), tr("year"), QString(), 5);
    for (const QString& file : QDir(QLatin1String(kStarters)).entryList({QStringLiteral("*.json")}))
        if (const auto starter =
                exchange::readStarter(readResource(QLatin1String(kStarters) + QLatin1Char('/') + file)))
            starter_->addItem(text(starter->name), file);
    if (const int at = starter_->findData(QLatin1String(kCommonest)); at >= 0)
        starter_->setCurrentIndex(at);
    addNote(tr(
        "A schedule brings common-practice intervals, not confirmed, and no torque: yours to check "
        "against the manual. Used, and nobody is sure of the hours? Leave them blank and weigh what you see "
        "afterwards: File, A used machine."));
    connect(past_, &QComboBox::currentIndexChanged, this, &MachineForm::followPast);
    followPast();
}

void MachineForm::followPast() {
    for (auto* field : {best_, low_, high_})
        field->parentWidget()->setVisible(past_->currentIndex() == 1);
}

items::Machine MachineForm::machine(Answers& read) const {
    items::Machine machine;
    machine.name = typed(name_);
    machine.maker = typed(maker_);
    machine.model = typed(model_);
    if (!typed(year_).empty())
        machine.year = read(countIn(year_, kLastYear));
    machine.since = read(dayIn(since_, Lean::Past));
    machine.startedNew = past_->currentIndex() == 0;
    machine.meterCountsTransport = counts_->currentIndex() == 1;
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
    std::optional<exchange::Starter> starter;
    if (const QString file = starter_->currentData().toString(); !file.isEmpty())
        starter =
            read(exchange::readStarter(readResource(QLatin1String(kStarters) + QLatin1Char('/') + file)));
    if (starter)
        machine.starter = starter->name;
    verbs.emplace_back([machine](const ledger::Pen& pen) { return ledger::saveMachine(pen, machine, true); });
    if (shown)
        verbs.push_back(firstReading(machine.name, *shown));
    if (starter)
        verbs.push_back(adopt(machine.name, *std::move(starter)));
    return std::move(read).answer(together(tr("add %1").arg(text(machine.name)), std::move(verbs)));
}

}  // namespace wm::ui
