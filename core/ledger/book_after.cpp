// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/ledger/book_parts.h"

// What a book takes over from the one before it: after a ride, a wash or a job on one machine everything that
// is about the others.

namespace wm::ledger {

namespace {

template <class R>
RowsView<R> added(const Ledger& before, const Ledger& after) {
    const auto rows = after.all<R>();
    const std::size_t known = before.all<R>().size();
    return {rows.data() + known, rows.size() - known};
}

template <class... Rows>
bool follow(const Ledger& before, const Ledger& after) {
    return (after.follows<Rows>(before) && ...);
}

template <class... Rows>
bool same(const Ledger& before, const Ledger& after) {
    return ((after.follows<Rows>(before) && added<Rows>(before, after).empty()) && ...);
}

template <class R>
void addOwn(RowsView<R> rows, Kept<MachineId, usage::UseFacts>& use, std::vector<R> usage::UseFacts::*field) {
    std::map<MachineId, std::vector<R>> byMachine;
    for (const R& row : rows)
        byMachine[row.machine].push_back(row);
    for (auto& [machine, own] : byMachine) {
        auto& into = use.own(machine).*field;
        into.insert(into.end(), own.begin(), own.end());
    }
}

template <class Visit>
void eachKindOfUse(Visit&& visit) {
    visit(&usage::UseFacts::hourReadings);
    visit(&usage::UseFacts::distanceReadings);
    visit(&usage::UseFacts::outings);
    visit(&usage::UseFacts::washes);
    visit(&usage::UseFacts::crashes);
}

void addRecords(RowsView<upkeep::Record> records, Kept<MachineId, RecordsOfMachine>& ofMachine,
                Kept<ItemId, std::vector<const upkeep::Record*>>& ofItem) {
    std::map<MachineId, std::vector<const upkeep::Record*>> byMachine;
    std::map<ItemId, std::vector<const upkeep::Record*>> byItem;
    for (const upkeep::Record& record : records) {
        byMachine[record.machine].push_back(&record);
        if (record.item)
            byItem[*record.item].push_back(&record);
    }
    for (const auto& [machine, own] : byMachine) {
        RecordsOfMachine& into = ofMachine.own(machine);
        for (const upkeep::Record* record : own)
            into.add(*record);
    }
    for (const auto& [item, own] : byItem) {
        auto& into = ofItem.own(item);
        into.insert(into.end(), own.begin(), own.end());
    }
}

// The machines that the rows which came are about.
std::set<MachineId> touchedBetween(const Ledger& before, const Ledger& after, const Groups& groups) {
    std::set<MachineId> touched;
    eachKindOfUse([&]<class R>(std::vector<R> usage::UseFacts::*) {
        for (const R& row : added<R>(before, after))
            touched.insert(row.machine);
    });
    for (const upkeep::Record& record : added<upkeep::Record>(before, after)) {
        touched.insert(record.machine);
        if (record.item)
            touched.merge(std::set(under(groups.carriedBy, *record.item)));
    }
    for (const upkeep::Deferral& deferral : added<upkeep::Deferral>(before, after))
        if (deferral.task)
            for (const auto* version : under(groups.taskVersions, *deferral.task))
                touched.insert(version->machine);
    return touched;
}

}  // namespace

void RecordsOfMachine::add(const upkeep::Record& record) {
    all.push_back(&record);
    ofJob[record.code].push_back(&record);
}

Book::Parts::Parts(std::shared_ptr<const Ledger> ledgerOf, calendar::Date todayOf, const Parts* before)
    : ledger(std::move(ledgerOf)), today(todayOf) {
    if (before != nullptr && takeOver(*before))
        return;
    if (groups == nullptr)
        groups = std::make_shared<const Groups>(*ledger);
    eachKindOfUse([this]<class R>(std::vector<R> usage::UseFacts::*field) {
        addOwn(ledger->all<R>(), useOfMachine, field);
    });
    addRecords(ledger->all<upkeep::Record>(), recordsOfMachine, recordsOfItem);
}

bool Book::Parts::takeOver(const Parts& before) {
    const Ledger& old = *before.ledger;
    const bool sameCards =
        same<items::Machine, items::Item, items::Move, upkeep::TaskVersion, weekend::Pick>(old, *ledger);
    if (sameCards && same<fastening::JointVersion, weekend::StepVersion, upkeep::Deferral>(old, *ledger))
        groups = before.groups;
    else
        groups = std::make_shared<const Groups>(*ledger);
    if (!sameCards || today != before.today || !same<outlook::Event>(old, *ledger) ||
        !follow<usage::HourReading, usage::DistanceReading, usage::Outing, usage::Wash, usage::Crash,
                upkeep::Record, upkeep::Deferral>(old, *ledger))
        return false;

    useOfMachine.takeOver(before.useOfMachine, std::set<MachineId>{});
    eachKindOfUse([&]<class R>(std::vector<R> usage::UseFacts::*field) {
        addOwn(added<R>(old, *ledger), useOfMachine, field);
    });
    recordsOfMachine.takeOver(before.recordsOfMachine, std::set<MachineId>{});
    recordsOfItem.takeOver(before.recordsOfItem, std::set<ItemId>{});
    addRecords(added<upkeep::Record>(old, *ledger), recordsOfMachine, recordsOfItem);

    const auto touched = touchedBetween(old, *ledger, *groups);
    std::set<ItemId> touchedItems;
    std::set<MachineId> linked = touched;  // and what ever shared an item with them
    for (const MachineId machine : touched)
        touchedItems.merge(std::set(under(groups->carried, machine)));
    for (const ItemId item : touchedItems)
        linked.merge(std::set(under(groups->carriedBy, item)));
    atomsOfMachine.takeOver(before.atomsOfMachine, touched);
    withPast.takeOver(before.withPast, touched);
    atomsOfItem.takeOver(before.atomsOfItem, touchedItems);
    odds.takeOver(before.odds, touched);
    due.takeOver(before.due, linked);
    chances.takeOver(before.chances, linked);
    if (same<stock::StockLine, stock::Lot, stock::StockMove, stock::StockOrder>(old, *ledger))
        shelf = before.shelf;
    return true;
}

}  // namespace wm::ledger
