// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/fitting.h"

#include <algorithm>
#include <tuple>

#include "core/items/positions.h"

namespace wm::book {

using calendar::DayPart;
using calendar::Moment;
using items::MoveKind;

namespace {

// The machine that carries an item at a moment, through whatever it is fitted to.
std::optional<MachineId> carrierOf(const Book& book, ItemId item, Moment when) {
    for (const auto& spell : book.fittings().machineSpells(item))
        if (spell.from <= when && (!spell.to || when < *spell.to))
            return spell.machine;
    return std::nullopt;
}

// The machine at which a move is seen: where it goes, or where it comes from.
std::optional<MachineId> machineOf(const Book& book, const items::Move& move) {
    const Moment when{move.date, move.part};
    if (move.machine)
        return move.machine;
    return carrierOf(book, move.parent.value_or(move.item), when);
}

int rankOf(const Fitting& fitting) {
    return !fitting.lies ? 2 : *fitting.lies == MoveKind::Away ? 1 : 0;
}

}  // namespace

std::optional<ItemId> sitsAt(const Book& book, const items::Move& place) {
    const Moment when{place.date, place.part};
    const auto there = place.machine  ? book.fittings().on(*place.machine, when)
                       : place.parent ? book.fittings().on(*place.parent, when)
                                      : std::vector<std::pair<std::string, ItemId>>{};
    for (const auto& [position, item] : there)
        if (position == place.position)
            return item;
    return std::nullopt;
}

Fit mayFit(const Book& book, const items::Item& item, const items::Move& place) {
    const Moment when{place.date, place.part};
    if (!items::accepts(place.position, item.kind))
        return {MayFit::WrongKind, {}};
    const auto now = book.fittings().placeOf(item.id, when);
    if (now && now->kind == MoveKind::Retired)
        return {MayFit::Retired, {}};
    if (const auto there = sitsAt(book, place); there && *there != item.id)
        return {MayFit::Taken, {}};
    const auto carrier = carrierOf(book, item.id, when);
    return {MayFit::Yes, carrier && carrier != machineOf(book, place) ? carrier : std::nullopt};
}

std::vector<Fitting> whatFits(const Book& book, const items::Move& place) {
    const Moment when{place.date, place.part};
    std::vector<Fitting> found;
    for (const auto& item : book.ledger().all<items::Item>()) {
        const auto now = book.fittings().placeOf(item.id, when);
        if (!items::accepts(place.position, item.kind) || (now && now->kind == MoveKind::Retired) ||
            item.id == place.parent)
            continue;
        Fitting fitting{.item = &item};
        if (!now || now->kind != MoveKind::Fitted)
            fitting.lies = now ? now->kind : MoveKind::Removed;
        else
            fitting.on = carrierOf(book, item.id, when);
        found.push_back(fitting);
    }
    const auto key = [](const Fitting& fitting) {
        return std::tuple(rankOf(fitting), std::string_view(fitting.item->name), fitting.item->id);
    };
    std::sort(found.begin(), found.end(),
              [&](const Fitting& a, const Fitting& b) { return key(a) < key(b); });
    return found;
}

const items::Item* spareFor(const Book& book, const upkeep::TaskVersion& task) {
    const auto sits = book.fittings().at(task.machine, task.position, {book.today(), DayPart::AfterRiding});
    const auto* card = sits ? book.ledger().find<items::Item>(*sits) : nullptr;
    if (card == nullptr)
        return nullptr;
    for (const Fitting& fitting : whatFits(book, {.date = book.today(), .position = task.position}))
        // Without a kind nobody knows that it fits; of its kind it does.
        if (fitting.lies == MoveKind::Removed && !fitting.item->kind.empty() &&
            fitting.item->kind == card->kind)
            return fitting.item;
    return nullptr;
}

bool riddenSince(const Book& book, MachineId machine, Moment when) {
    const auto outings = book.ledger().all<usage::Outing>();
    return std::any_of(outings.begin(), outings.end(), [&](const usage::Outing& outing) {
        return outing.machine == machine && when < Moment{outing.date, DayPart::Riding};
    });
}

items::Told proposedTold(const Book& book, const items::Move& move) {
    const auto* item = book.ledger().find<items::Item>(move.item);
    const bool hasPast = item != nullptr && !item->startedNew;
    if (move.kind == MoveKind::Fitted && hasPast && book.fittings().spells(move.item).empty() &&
        !book.fittings().wasTaken({.machine = move.machine, .parent = move.parent, .position = move.position},
                                  {move.date, move.part}))
        return items::Told::AsItWas;
    const auto machine = machineOf(book, move);
    return machine && riddenSince(book, *machine, {move.date, move.part}) ? items::Told::Unasked
                                                                          : items::Told::Work;
}

}  // namespace wm::book
