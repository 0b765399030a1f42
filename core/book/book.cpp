// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/book/book.h"

#include <algorithm>
#include <iterator>
#include <set>
#include <tuple>
#include <unordered_map>

#include "core/book/book_parts.h"
#include "core/calendar/in_force.h"

namespace wm::book {

using calendar::DayPart;
using calendar::inForce;
using calendar::Moment;
using picture::Ledger;
using picture::RowsView;

namespace {

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

// The active version of a machine with this code; no two of them share one.
template <class Key, class V>
const V* activeWith(const std::map<Key, std::vector<const V*>>& groups, MachineId machine,
                    std::string_view code, calendar::Date on) {
    for (const auto& [id, versions] : groups)
        if (versions.front()->machine == machine)
            if (const V* version = inForce(versions, on);
                version != nullptr && version->active && version->code == code)
                return version;
    return nullptr;
}

template <class R, class Key>
void group(RowsView<R> rows, std::map<Key, std::vector<const R*>>& into, Key R::*key) {
    for (const R& row : rows)
        into[row.*key].push_back(&row);
}

}  // namespace

Groups::Groups(const Ledger& ledger) : fittings(ledger.all<items::Move>()) {
    group(ledger.all<upkeep::TaskVersion>(), taskVersions, &upkeep::TaskVersion::task);
    group(ledger.all<fastening::JointVersion>(), jointVersions, &fastening::JointVersion::joint);
    group(ledger.all<weekend::StepVersion>(), stepVersions, &weekend::StepVersion::step);
    for (const auto& deferral : ledger.all<upkeep::Deferral>()) {
        if (deferral.task)
            deferralsOfTask[*deferral.task].push_back(&deferral);
        if (deferral.snag)
            deferralsOfSnag[*deferral.snag].push_back(&deferral);
    }
    for (const auto& pick : ledger.all<weekend::Pick>()) {
        if (pick.picked && pick.task)
            pickedTasks.insert(*pick.task);
        if (pick.picked && pick.snag)
            pickedSnags.insert(*pick.snag);
    }
    for (const auto& item : ledger.all<items::Item>())
        for (const auto& spell : fittings.machineSpells(item.id)) {
            carried[spell.machine].insert(item.id);
            carriedBy[item.id].insert(spell.machine);
        }
}

const std::vector<usage::Atom>& Book::Parts::machineAtoms(MachineId machine) {
    return atomsOfMachine.get(machine, [&] {
        const items::Machine* card = ledger->find<items::Machine>(machine);
        return usage::atomsOf(use(machine), card != nullptr && card->meterCountsTransport
                                                ? usage::MeterCounts::TransportToo
                                                : usage::MeterCounts::Riding);
    });
}

const usage::UseFacts& Book::Parts::use(MachineId machine) {
    return useOfMachine.get(machine, [] { return usage::UseFacts{}; });
}

const RecordsOfMachine& Book::Parts::records(MachineId machine) {
    return recordsOfMachine.get(machine, [] { return RecordsOfMachine{}; });
}

const std::vector<const upkeep::Record*>& Book::Parts::records(ItemId item) {
    return recordsOfItem.get(item, [] { return std::vector<const upkeep::Record*>{}; });
}

Moment Book::Parts::now() const {
    return Moment{today, DayPart::AfterRiding};
}

Book::Book(std::shared_ptr<const Ledger> ledger, calendar::Date today)
    : parts_(std::make_unique<Parts>(std::move(ledger), today, nullptr)) {}
Book::Book(std::shared_ptr<const Ledger> ledger, calendar::Date today, const Book& before)
    : parts_(std::make_unique<Parts>(std::move(ledger), today, before.parts_.get())) {}
Book Book::supposing(MachineId machine, const outlook::Supposing& what) const {
    Book other(parts_->ledger, today(), *this);
    other.parts_->due.forget(machine);
    other.parts_->chances.forget(machine);
    other.parts_->odds.put(machine, outlook::Odds(outlook::supposing(ahead(machine), what)));
    return other;
}
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
    return parts_->groups->fittings;
}

const upkeep::Record& Book::placed(const upkeep::Record& record) const {
    return parts_->placed->placed(record);
}

calendar::DayPart Book::partByMeter(const upkeep::Record& record) const {
    return parts_->placed->partOf(record);
}

std::vector<const items::Machine*> Book::machines() const {
    std::vector<const items::Machine*> result;
    for (const items::Machine& machine : ledger().all<items::Machine>())
        if (!machine.goneOn || *machine.goneOn > today())
            result.push_back(&machine);
    std::sort(result.begin(), result.end(), [](const auto* a, const auto* b) { return a->name < b->name; });
    return result;
}

const usage::UseFacts& Book::use(MachineId machine) const {
    return parts_->use(machine);
}

const std::vector<usage::Atom>& Book::atoms(MachineId machine) const {
    return parts_->withPast.get(machine, [&] {
        const items::Machine* card = ledger().find<items::Machine>(machine);
        const auto& own = parts_->machineAtoms(machine);
        return card == nullptr ? own : items::withPast(*card, own);
    });
}

const std::vector<usage::Atom>& Book::atoms(ItemId item) const {
    return parts_->atomsOfItem.get(item, [&] {
        const items::Item* card = ledger().find<items::Item>(item);
        return card == nullptr ? std::vector<usage::Atom>{}
                               : items::atomsOf(*card, fittings(), [this](MachineId machine) {
                                     return std::span<const usage::Atom>(parts_->machineAtoms(machine));
                                 });
    });
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
    const usage::HourReading* last = nullptr;
    for (const auto& reading : parts_->use(machine).hourReadings)
        if (reading.date <= today() && (last == nullptr || usage::comesBefore(*last, reading)))
            last = &reading;
    return last == nullptr ? std::nullopt : std::optional(last->shown);
}

const outlook::Ahead& Book::ahead(MachineId machine) const {
    return odds(machine).ahead();
}

// What a meter tells of the time before says how somebody else rode, or with another machine beside it: no
// habit is learned from it.
std::vector<usage::Atom> Book::riddenHere(MachineId machine) const {
    const auto* card = ledger().find<items::Machine>(machine);
    const auto& atoms = parts_->machineAtoms(machine);
    const auto before = [card](const usage::Atom& atom) {
        return card != nullptr && atom.from < Moment{card->since, DayPart::BeforeRiding};
    };
    std::vector<usage::Atom> here;
    std::remove_copy_if(atoms.begin(), atoms.end(), std::back_inserter(here), before);
    return here;
}

const outlook::Odds& Book::odds(MachineId machine) const {
    return parts_->odds.get(machine, [&] {
        return outlook::Odds(
            outlook::aheadOf(machine, riddenHere(machine), ledger().all<outlook::Event>(), today()));
    });
}

std::vector<const upkeep::TaskVersion*> Book::tasks(MachineId machine) const {
    std::vector<std::vector<const upkeep::TaskVersion*>> own;
    for (const auto& [task, versions] : parts_->groups->taskVersions)
        if (versions.front()->machine == machine)
            own.push_back(versions);
    return activeOf(own, today());
}

std::vector<const fastening::JointVersion*> Book::joints(MachineId machine) const {
    std::vector<std::vector<const fastening::JointVersion*>> own;
    for (const auto& [joint, versions] : parts_->groups->jointVersions)
        if (versions.front()->machine == machine)
            own.push_back(versions);
    return activeOf(own, today());
}

std::vector<const weekend::StepVersion*> Book::steps(MachineId machine) const {
    std::vector<std::vector<const weekend::StepVersion*>> own;
    for (const auto& [step, versions] : parts_->groups->stepVersions)
        if (versions.front()->machine == machine)
            own.push_back(versions);
    return activeOf(own, today());
}

const upkeep::TaskVersion* Book::task(TaskId task) const {
    const auto versions = parts_->groups->taskVersions.find(task);
    return versions == parts_->groups->taskVersions.end() ? nullptr : inForce(versions->second, today());
}

const fastening::JointVersion* Book::joint(JointId joint) const {
    const auto versions = parts_->groups->jointVersions.find(joint);
    return versions == parts_->groups->jointVersions.end() ? nullptr : inForce(versions->second, today());
}

const fastening::JointVersion* Book::joint(MachineId machine, std::string_view code) const {
    return activeWith(parts_->groups->jointVersions, machine, code, today());
}

const weekend::StepVersion* Book::step(MachineId machine, std::string_view code) const {
    return activeWith(parts_->groups->stepVersions, machine, code, today());
}

const std::vector<stock::OnHand>& Book::shelf() const {
    if (parts_->shelf == nullptr)
        parts_->shelf = std::make_shared<const std::vector<stock::OnHand>>(
            stock::onHand(ledger().all<stock::StockLine>(), ledger().all<stock::Lot>(),
                          ledger().all<stock::StockMove>(), ledger().all<stock::StockOrder>(), today()));
    return *parts_->shelf;
}

const stock::OnHand* Book::onHand(StockLineId line) const {
    for (const auto& entry : shelf())
        if (entry.line == line)
            return &entry;
    return nullptr;
}

std::vector<const upkeep::Record*> Book::records(MachineId machine, bool withStruck) const {
    std::vector<const upkeep::Record*> result = parts_->records(machine).all;
    if (withStruck)
        for (const auto& record : ledger().struck<upkeep::Record>())
            if (record.machine == machine)
                result.push_back(&record);
    std::sort(result.begin(), result.end(), newestFirst);
    return result;
}

std::vector<const upkeep::Record*> Book::records(ItemId item) const {
    std::vector<const upkeep::Record*> result = parts_->records(item);
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

}  // namespace wm::book
