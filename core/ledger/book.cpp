// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/ledger/book.h"

#include <algorithm>
#include <set>
#include <tuple>
#include <unordered_map>

#include "core/ledger/book_parts.h"

namespace wm::ledger {

using calendar::DayPart;
using calendar::Moment;

namespace {

// The wording that is in force on a day, of versions in order of entry: the last one whose day has come. A
// wording that only comes later is nothing yet.
template <class V>
const V* inForce(const std::vector<const V*>& versions, calendar::Date on) {
    const V* best = nullptr;
    for (const V* version : versions)
        if (version->validFrom <= on && (best == nullptr || best->validFrom <= version->validFrom))
            best = version;
    return best;
}

template <class V>
std::vector<const V*> activeOf(const std::vector<std::vector<const V*>>& groups, calendar::Date on) {
    std::vector<const V*> result;
    for (const auto& versions : groups)
        if (const V* version = inForce(versions, on); version != nullptr && version->active)
            result.push_back(version);
    std::sort(result.begin(), result.end(),
              [](const V* a, const V* b) { return std::tie(a->name, a->id) < std::tie(b->name, b->id); });
    return result;
}

template <class R, class Key>
void group(const std::vector<R>& rows, std::map<Key, std::vector<const R*>>& into, Key R::*key) {
    for (const R& row : rows)
        into[row.*key].push_back(&row);
}

}  // namespace

Book::Parts::Parts(std::shared_ptr<const Ledger> ledgerOf, calendar::Date todayOf)
    : ledger(std::move(ledgerOf)), today(todayOf), fittings(ledger->all<items::Move>()) {
    group(ledger->all<upkeep::TaskVersion>(), taskVersions, &upkeep::TaskVersion::task);
    group(ledger->all<fastening::JointVersion>(), jointVersions, &fastening::JointVersion::joint);
    group(ledger->all<weekend::StepVersion>(), stepVersions, &weekend::StepVersion::step);
    group(ledger->all<upkeep::Record>(), recordsOfMachine, &upkeep::Record::machine);
    for (const upkeep::Record& record : ledger->all<upkeep::Record>())
        if (record.item)
            recordsOfItem[*record.item].push_back(&record);
    for (const auto& reading : ledger->all<usage::HourReading>())
        use[reading.machine].hourReadings.push_back(reading);
    for (const auto& reading : ledger->all<usage::DistanceReading>())
        use[reading.machine].distanceReadings.push_back(reading);
    for (const auto& outing : ledger->all<usage::Outing>())
        use[outing.machine].outings.push_back(outing);
    for (const auto& wash : ledger->all<usage::Wash>())
        use[wash.machine].washes.push_back(wash);
    for (const auto& crash : ledger->all<usage::Crash>())
        use[crash.machine].crashes.push_back(crash);
    for (const auto& deferral : ledger->all<upkeep::Deferral>()) {
        if (deferral.task)
            deferralsOfTask[*deferral.task].push_back(&deferral);
        if (deferral.snag)
            deferralsOfSnag[*deferral.snag].push_back(&deferral);
    }
    for (const auto& pick : ledger->all<weekend::Pick>()) {
        if (pick.picked && pick.task)
            pickedTasks.insert(*pick.task);
        if (pick.picked && pick.snag)
            pickedSnags.insert(*pick.snag);
    }
}

const std::vector<usage::Atom>& Book::Parts::machineAtoms(MachineId machine) {
    const auto known = atomsOfMachine.find(machine);
    if (known != atomsOfMachine.end())
        return known->second;
    const auto facts = use.find(machine);
    auto atoms = facts == use.end() ? std::vector<usage::Atom>{} : usage::atomsOf(facts->second);
    return atomsOfMachine.emplace(machine, std::move(atoms)).first->second;
}

Moment Book::Parts::now() const {
    return Moment{today, DayPart::AfterRiding};
}

Book::Book(std::shared_ptr<const Ledger> ledger, calendar::Date today)
    : parts_(std::make_unique<Parts>(std::move(ledger), today)) {}
Book::~Book() = default;
Book::Book(Book&&) noexcept = default;
Book& Book::operator=(Book&&) noexcept = default;

const Ledger& Book::ledger() const {
    return *parts_->ledger;
}
calendar::Date Book::today() const {
    return parts_->today;
}
const items::Fittings& Book::fittings() const {
    return parts_->fittings;
}

std::vector<const items::Machine*> Book::machines() const {
    std::vector<const items::Machine*> result;
    for (const items::Machine& machine : ledger().all<items::Machine>())
        if (!machine.goneOn || *machine.goneOn > today())
            result.push_back(&machine);
    std::sort(result.begin(), result.end(), [](const auto* a, const auto* b) { return a->name < b->name; });
    return result;
}

const std::vector<usage::Atom>& Book::atoms(MachineId machine) const {
    const auto known = parts_->withPast.find(machine);
    if (known != parts_->withPast.end())
        return known->second;
    const items::Machine* card = ledger().find<items::Machine>(machine);
    const auto& own = parts_->machineAtoms(machine);
    auto all = card == nullptr ? own : items::withPast(*card, own);
    return parts_->withPast.emplace(machine, std::move(all)).first->second;
}

const std::vector<usage::Atom>& Book::atoms(ItemId item) const {
    const auto known = parts_->atomsOfItem.find(item);
    if (known != parts_->atomsOfItem.end())
        return known->second;
    const items::Item* card = ledger().find<items::Item>(item);
    auto atoms = card == nullptr ? std::vector<usage::Atom>{}
                                 : items::atomsOf(*card, fittings(), [this](MachineId machine) {
                                       return std::span<const usage::Atom>(parts_->machineAtoms(machine));
                                   });
    return parts_->atomsOfItem.emplace(item, std::move(atoms)).first->second;
}

usage::Exposure Book::life(MachineId machine) const {
    return lifeAt(machine, parts_->now());
}
usage::Exposure Book::life(ItemId item) const {
    return lifeAt(item, parts_->now());
}

usage::Exposure Book::lifeAt(MachineId machine, Moment when) const {
    return usage::exposure(atoms(machine), std::nullopt, when);
}

usage::Exposure Book::lifeAt(ItemId item, Moment when) const {
    return usage::exposure(atoms(item), std::nullopt, when);
}

std::optional<units::Hours> Book::meterNow(MachineId machine) const {
    const auto facts = parts_->use.find(machine);
    if (facts == parts_->use.end())
        return std::nullopt;
    const usage::HourReading* last = nullptr;
    for (const auto& reading : facts->second.hourReadings)
        if (reading.date <= today() && (last == nullptr || usage::comesBefore(*last, reading)))
            last = &reading;
    return last == nullptr ? std::nullopt : std::optional(last->shown);
}

const outlook::Ahead& Book::ahead(MachineId machine) const {
    return odds(machine).ahead();
}

const outlook::Odds& Book::odds(MachineId machine) const {
    const auto known = parts_->odds.find(machine);
    if (known != parts_->odds.end())
        return known->second;
    return parts_->odds
        .emplace(machine, outlook::aheadOf(machine, parts_->machineAtoms(machine),
                                           ledger().all<outlook::Event>(), today()))
        .first->second;
}

std::vector<const upkeep::TaskVersion*> Book::tasks(MachineId machine) const {
    std::vector<std::vector<const upkeep::TaskVersion*>> groups;
    for (const auto& [task, versions] : parts_->taskVersions)
        if (versions.front()->machine == machine)
            groups.push_back(versions);
    return activeOf(groups, today());
}

std::vector<const fastening::JointVersion*> Book::joints(MachineId machine) const {
    std::vector<std::vector<const fastening::JointVersion*>> groups;
    for (const auto& [joint, versions] : parts_->jointVersions)
        if (versions.front()->machine == machine)
            groups.push_back(versions);
    return activeOf(groups, today());
}

std::vector<const weekend::StepVersion*> Book::steps(MachineId machine) const {
    std::vector<std::vector<const weekend::StepVersion*>> groups;
    for (const auto& [step, versions] : parts_->stepVersions)
        if (versions.front()->machine == machine)
            groups.push_back(versions);
    return activeOf(groups, today());
}

const upkeep::TaskVersion* Book::task(TaskId task) const {
    const auto versions = parts_->taskVersions.find(task);
    return versions == parts_->taskVersions.end() ? nullptr : inForce(versions->second, today());
}

const fastening::JointVersion* Book::joint(JointId joint) const {
    const auto versions = parts_->jointVersions.find(joint);
    return versions == parts_->jointVersions.end() ? nullptr : inForce(versions->second, today());
}

const fastening::JointVersion* Book::joint(MachineId machine, std::string_view code) const {
    for (const auto* joint : joints(machine))
        if (joint->code == code)
            return joint;
    return nullptr;
}

const weekend::StepVersion* Book::step(MachineId machine, std::string_view code) const {
    for (const auto* step : steps(machine))
        if (step->code == code)
            return step;
    return nullptr;
}

const std::vector<stock::OnHand>& Book::shelf() const {
    if (!parts_->shelf)
        parts_->shelf =
            stock::onHand(ledger().all<stock::StockLine>(), ledger().all<stock::Lot>(),
                          ledger().all<stock::StockMove>(), ledger().all<stock::StockOrder>(), today());
    return *parts_->shelf;
}

const stock::OnHand* Book::onHand(StockLineId line) const {
    for (const auto& entry : shelf())
        if (entry.line == line)
            return &entry;
    return nullptr;
}

std::vector<const upkeep::Record*> Book::records(MachineId machine, bool withStruck) const {
    std::vector<const upkeep::Record*> result;
    if (const auto own = parts_->recordsOfMachine.find(machine); own != parts_->recordsOfMachine.end())
        result = own->second;
    if (withStruck)
        for (const auto& record : ledger().struck<upkeep::Record>())
            if (record.machine == machine)
                result.push_back(&record);
    std::sort(result.begin(), result.end(), newestFirst);
    return result;
}

std::vector<const upkeep::Record*> Book::records(ItemId item) const {
    std::vector<const upkeep::Record*> result;
    if (const auto own = parts_->recordsOfItem.find(item); own != parts_->recordsOfItem.end())
        result = own->second;
    std::sort(result.begin(), result.end(), newestFirst);
    return result;
}

const weekend::WorkWindow* Book::nextWindow() const {
    const weekend::WorkWindow* next = nullptr;
    for (const auto& window : ledger().all<weekend::WorkWindow>()) {
        const auto key = [](const weekend::WorkWindow& w) { return std::tuple(w.date, w.startsAt, w.id); };
        if (window.active && window.date >= today() && (next == nullptr || key(window) < key(*next)))
            next = &window;
    }
    return next;
}

}  // namespace wm::ledger
