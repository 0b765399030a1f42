// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/oddities.h"

#include <algorithm>
#include <tuple>

#include "core/items/positions.h"
#include "core/picture/facts.h"
#include "core/usage/meter_doubts.h"

namespace wm::book {

namespace {

template <class Reading>
void addReadings(std::vector<Oddity>& odd, const std::string& where, const std::vector<Reading>& readings) {
    for (usage::OddReading& reading : usage::oddReadings(readings))
        odd.push_back({where, reading.at.date, std::move(reading.error)});
}

void addMachine(std::vector<Oddity>& odd, const Book& book, const items::Machine& machine) {
    const usage::UseFacts& use = book.use(machine.id);
    addReadings(odd, machine.name, use.hourReadings);
    addReadings(odd, machine.name, use.distanceReadings);
    for (const usage::MeterStood& stood : usage::whereItStood(use))
        odd.push_back({machine.name, stood.to.date, usage::questionOf(stood).value()});
}

std::string placeOf(const picture::Ledger& ledger, const items::Move& move) {
    const auto* parent = move.parent ? ledger.find<items::Item>(*move.parent) : nullptr;
    const std::string host = move.machine        ? picture::machineName(ledger, *move.machine)
                             : parent != nullptr ? parent->name
                                                 : std::string{};
    return host.empty() ? move.position : host + ", " + move.position;
}

void addFittings(std::vector<Oddity>& odd, const Book& book) {
    std::vector<const items::Move*> moves;
    for (const auto& move : book.ledger().all<items::Move>())
        if (move.kind == items::MoveKind::Fitted)
            moves.push_back(&move);
    std::sort(moves.begin(), moves.end(), [](const items::Move* a, const items::Move* b) {
        return std::tie(a->date, a->part, a->entered) < std::tie(b->date, b->part, b->entered);
    });
    for (const items::Move* move : moves) {
        const auto* item = book.ledger().find<items::Item>(move->item);
        if (item != nullptr && !items::accepts(move->position, item->kind))
            odd.push_back({placeOf(book.ledger(), *move), move->date,
                           base::Error{base::Fault::WrongKind, "item", item->name, item->kind}});
    }
}

}  // namespace

std::vector<Oddity> oddities(const Book& book) {
    std::vector<const items::Machine*> machines;
    for (const items::Machine& machine : book.ledger().all<items::Machine>())
        machines.push_back(&machine);
    std::sort(machines.begin(), machines.end(), [](const items::Machine* a, const items::Machine* b) {
        return std::tie(a->name, a->id) < std::tie(b->name, b->id);
    });
    std::vector<Oddity> odd;
    for (const items::Machine* machine : machines)
        addMachine(odd, book, *machine);
    addFittings(odd, book);
    return odd;
}

}  // namespace wm::book
