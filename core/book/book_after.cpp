// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/book_parts.h"

#include <type_traits>

// What a book takes over from the one before it: after a ride, a wash or a job on one machine everything that
// is about the others; on another day what does not look ahead.

namespace wm::book {

using picture::Ledger;
using picture::RowsView;

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
R asMeant(const R& row, const Placed& placed) {
    if constexpr (std::is_same_v<R, usage::HourReading>)
        return placed.placed(row);
    else
        return row;
}

template <class R>
void addOwn(RowsView<R> rows, const Placed& placed, Memo<MachineId, usage::UseFacts>& use,
            std::vector<R> usage::UseFacts::*field) {
    std::map<MachineId, std::vector<R>> byMachine;
    for (const R& row : rows)
        byMachine[row.machine].push_back(asMeant(row, placed));
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

void addRecords(RowsView<upkeep::Record> records, const Placed& placed,
                Memo<MachineId, RecordsOfMachine>& ofMachine,
                Memo<ItemId, std::vector<const upkeep::Record*>>& ofItem) {
    std::map<MachineId, std::vector<const upkeep::Record*>> byMachine;
    std::map<ItemId, std::vector<const upkeep::Record*>> byItem;
    for (const upkeep::Record& told : records) {
        const upkeep::Record& record = placed.placed(told);
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

// The machines that the use which came is about.
std::set<MachineId> riddenBetween(const Ledger& before, const Ledger& after) {
    std::set<MachineId> touched;
    eachKindOfUse([&]<class R>(std::vector<R> usage::UseFacts::*) {
        for (const R& row : added<R>(before, after))
            touched.insert(row.machine);
    });
    return touched;
}

// What was ever in one whole with the item, over any number of moves: a job on it may have been on them all.
std::set<ItemId> everJoined(ItemId item, const Ledger& ledger) {
    std::set<ItemId> joined{item};
    for (std::size_t known = 0; known != joined.size();) {
        known = joined.size();
        for (const items::Move& move : ledger.all<items::Move>())
            if (move.parent && (joined.contains(move.item) || joined.contains(*move.parent)))
                joined.insert({move.item, *move.parent});
    }
    return joined;
}

// And those that jobs and deferrals are about.
std::set<MachineId> workedOnBetween(const Ledger& before, const Ledger& after, const Groups& groups) {
    std::set<MachineId> touched;
    for (const upkeep::Record& record : added<upkeep::Record>(before, after)) {
        touched.insert(record.machine);
        if (record.item)
            for (const ItemId item : everJoined(*record.item, after))
                touched.merge(std::set(under(groups.carriedBy, item)));
    }
    for (const upkeep::Deferral& deferral : added<upkeep::Deferral>(before, after))
        if (deferral.task)
            for (const auto* version : under(groups.taskVersions, *deferral.task))
                touched.insert(version->machine);
    return touched;
}

std::set<ItemId> carriedByAny(const std::set<MachineId>& machines, const Groups& groups) {
    std::set<ItemId> items;
    for (const MachineId machine : machines)
        items.merge(std::set(under(groups.carried, machine)));
    return items;
}

bool onlyMoreUse(const Ledger& before, const Ledger& after) {
    return follow<usage::HourReading, usage::DistanceReading, usage::Outing, usage::Wash, usage::Crash>(
        before, after);
}

}  // namespace

void RecordsOfMachine::add(const upkeep::Record& record) {
    all.push_back(&record);
    ofJob[record.code].push_back(&record);
}

Book::Parts::Parts(std::shared_ptr<const Ledger> ledgerOf, calendar::Date todayOf, const Parts* before)
    : ledger(std::move(ledgerOf)), today(todayOf) {
    const Ledger nothing;
    const Ledger& old = before == nullptr ? nothing : *before->ledger;
    const bool sameGroups =
        before != nullptr && same<items::Item, items::Move, upkeep::TaskVersion, fastening::JointVersion,
                                  weekend::StepVersion, upkeep::Deferral, weekend::Pick>(old, *ledger);
    groups = sameGroups ? before->groups : std::make_shared<const Groups>(*ledger);

    const bool samePlaces =
        before != nullptr &&
        same<upkeep::Record, upkeep::TaskVersion, usage::HourReading, items::Move>(old, *ledger);
    placed = samePlaces ? before->placed
                        : std::make_shared<const Placed>(*ledger, groups->fittings,
                                                         before == nullptr ? nullptr : before->placed.get());
    const bool sharesPlaces = before != nullptr && before->placed->shares(*placed);
    const bool sameUse = sharesPlaces && onlyMoreUse(old, *ledger);
    if (sameUse)
        useOfMachine.takeOver(before->useOfMachine, std::set<MachineId>{});
    eachKindOfUse([&]<class R>(std::vector<R> usage::UseFacts::*field) {
        addOwn(added<R>(sameUse ? old : nothing, *ledger), *placed, useOfMachine, field);
    });
    const bool sameRecords = sharesPlaces && follow<upkeep::Record>(old, *ledger);
    if (sameRecords) {
        recordsOfMachine.takeOver(before->recordsOfMachine, std::set<MachineId>{});
        recordsOfItem.takeOver(before->recordsOfItem, std::set<ItemId>{});
    }
    addRecords(added<upkeep::Record>(sameRecords ? old : nothing, *ledger), *placed, recordsOfMachine,
               recordsOfItem);
    if (sameUse)
        takeFigures(*before);
}

void Book::Parts::takeFigures(const Parts& before) {
    const Ledger& old = *before.ledger;
    if (!same<items::Machine, items::Item, items::Move>(old, *ledger))
        return;
    std::set<MachineId> touched = riddenBetween(old, *ledger);
    atomsOfMachine.takeOver(before.atomsOfMachine, touched);
    withPast.takeOver(before.withPast, touched);
    atomsOfItem.takeOver(before.atomsOfItem, carriedByAny(touched, *groups));
    if (today != before.today)
        return;
    if (same<stock::StockLine, stock::Lot, stock::StockMove, stock::StockOrder>(old, *ledger))
        shelf = before.shelf;
    if (!same<outlook::Event>(old, *ledger))
        return;
    odds.takeOver(before.odds, touched);
    if (!same<upkeep::TaskVersion, fastening::JointVersion, weekend::StepVersion, weekend::Pick>(old,
                                                                                                 *ledger) ||
        !follow<upkeep::Record, upkeep::Deferral>(old, *ledger))
        return;
    touched.merge(workedOnBetween(old, *ledger, *groups));
    for (const ItemId item : carriedByAny(touched, *groups))  // and what ever shared an item with them
        touched.merge(std::set(under(groups->carriedBy, item)));
    due.takeOver(before.due, touched);
    chances.takeOver(before.chances, touched);
}

}  // namespace wm::book
