// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/places_then.h"

#include <algorithm>

namespace wm::tale {

using calendar::Date;
using calendar::DayPart;
using calendar::Moment;
using items::Move;

namespace {

Moment whenOf(const Move& move) {
    return {move.date, move.part};
}

bool isLater(const Move& one, const Move& other) {
    return whenOf(other) < whenOf(one) || (whenOf(other) == whenOf(one) && other.entered < one.entered);
}

Spot spotOfMove(const Move& move) {
    return {move.machine, move.parent, move.position};
}

template <class Fact>
void firstOf(const picture::Ledger& ledger, Date& first) {
    for (const Fact& fact : ledger.all<Fact>())
        first = std::min(first, fact.date);
}

}  // namespace

std::vector<std::string> partsOf(const std::string& path) {
    std::vector<std::string> parts;
    std::string::size_type from = 0;
    for (;;) {
        const auto slash = path.find('/', from);
        parts.push_back(path.substr(from, slash - from));
        if (slash == std::string::npos)
            return parts;
        from = slash + 1;
    }
}

const Move* PlacesThen::firstMoveOf(ItemId item) const {
    const Move* first = nullptr;
    for (const Move& move : ledger_.all<Move>())
        if (move.item == item && (first == nullptr || isLater(*first, move)))
            first = &move;
    return first;
}

bool PlacesThen::wasThereBefore(ItemId item) const {
    const Move* first = firstMoveOf(item);
    const auto* card = ledger_.find<items::Item>(item);
    if (first == nullptr || first->kind != items::MoveKind::Fitted || card->startedNew ||
        first->date != card->since)
        return false;
    for (const Move& move : ledger_.all<Move>())
        if (move.kind == items::MoveKind::Fitted && spotOfMove(move) == spotOfMove(*first) &&
            isLater(*first, move))
            return false;
    return true;
}

std::optional<Spot> PlacesThen::toldSpotOf(ItemId item, Moment then) const {
    const Move* last = nullptr;
    for (const Move& move : ledger_.all<Move>())
        if (move.item == item && whenOf(move) <= then && (last == nullptr || isLater(move, *last)))
            last = &move;
    if (last == nullptr || last->kind != items::MoveKind::Fitted)
        return std::nullopt;
    return spotOfMove(*last);
}

std::optional<Spot> PlacesThen::spotOf(ItemId item, Moment then) const {
    const Move* first = firstMoveOf(item);
    if (first != nullptr && then < whenOf(*first))
        return wasThereBefore(item) ? std::optional(spotOfMove(*first)) : std::nullopt;
    return toldSpotOf(item, then);
}

std::optional<RootPlace> PlacesThen::rootOf(ItemId item, Moment then) const {
    const auto spot = spotOf(item, then);
    if (!spot)
        return std::nullopt;
    if (spot->machine)
        return RootPlace{*spot->machine, spot->position};
    auto root = rootOf(*spot->parent, then);
    if (root)
        root->path += "/" + spot->position;
    return root;
}

bool PlacesThen::areRelated(ItemId one, ItemId other, Moment then) const {
    const auto isIn = [&](ItemId part, ItemId whole) {
        for (std::optional<ItemId> at = part; at;) {
            if (*at == whole)
                return true;
            const auto spot = spotOf(*at, then);
            at = spot ? spot->parent : std::nullopt;
        }
        return false;
    };
    return isIn(one, other) || isIn(other, one);
}

std::optional<ItemId> PlacesThen::sitsAt(const Spot& spot, Moment then) const {
    for (const items::Item& item : ledger_.all<items::Item>())
        if (toldSpotOf(item.id, then) == spot)
            return item.id;
    return std::nullopt;
}

PlacesThen::Holds PlacesThen::holds(MachineId machine, const std::string& path, Moment then) const {
    Holds holds;
    for (const std::string& part : partsOf(path)) {
        const Spot spot{holds.deepest ? std::nullopt : std::optional(machine), holds.deepest, part};
        holds.item = sitsAt(spot, then);
        if (!holds.item) {
            for (const Move& move : ledger_.all<Move>())
                if (move.kind == items::MoveKind::Fitted && spotOfMove(move) == spot && whenOf(move) <= then)
                    holds.isEmpty = true;
            return holds;
        }
        holds.deepest = holds.item;
    }
    return holds;
}

std::optional<Date> PlacesThen::emptySince(MachineId machine, const std::string& path, Moment then) const {
    std::optional<Date> since;
    for (Date day = firstDay(); day <= then.date; day = day.plusDays(1))
        for (const DayPart part : {DayPart::BeforeRiding, DayPart::Riding, DayPart::AfterRiding}) {
            const Moment now{day, part};
            if (then < now)
                continue;
            if (!holds(machine, path, now).isEmpty)
                since.reset();
            else if (!since)
                since = day;
        }
    return since;
}

Date PlacesThen::firstDay() const {
    Date first{200'000};
    firstOf<Move>(ledger_, first);
    firstOf<upkeep::Record>(ledger_, first);
    firstOf<usage::Outing>(ledger_, first);
    firstOf<usage::HourReading>(ledger_, first);
    firstOf<usage::Wash>(ledger_, first);
    firstOf<usage::Crash>(ledger_, first);
    return first;
}

slow::Garage slowGarage(const picture::Ledger& ledger, Date first, Date last) {
    slow::Garage garage;
    for (const auto& machine : ledger.all<items::Machine>())
        garage.use[machine.id];
    for (const auto& reading : ledger.all<usage::HourReading>())
        garage.use[reading.machine].hourReadings.push_back(reading);
    for (const auto& outing : ledger.all<usage::Outing>())
        garage.use[outing.machine].outings.push_back(outing);
    for (const auto& wash : ledger.all<usage::Wash>())
        garage.use[wash.machine].washes.push_back(wash);
    for (const auto& crash : ledger.all<usage::Crash>())
        garage.use[crash.machine].crashes.push_back(crash);
    for (const auto& move : ledger.all<Move>())
        garage.moves.push_back(move);
    for (const auto& item : ledger.all<items::Item>())
        garage.items.push_back(item);
    garage.first = first;
    garage.last = last;
    return garage;
}

}  // namespace wm::tale
