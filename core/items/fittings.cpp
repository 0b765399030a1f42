// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/items/fittings.h"

#include <algorithm>
#include <limits>
#include <tuple>

#include "core/base/text.h"

namespace wm::items {

using base::Fault;
using base::refuse;
using base::Result;
using calendar::Moment;

namespace {

constexpr Moment kBeginning{calendar::Date{std::numeric_limits<std::int32_t>::min()},
                            calendar::DayPart::BeforeRiding};

// An end that is nothing lies behind every moment.
bool endsAfter(const std::optional<Moment>& end, Moment moment) {
    return !end || *end > moment;
}

// May an item that is in the state `before` make a move of this kind?
Result<void> follows(std::optional<MoveKind> before, MoveKind kind) {
    if (before == MoveKind::Retired)
        return refuse(Fault::Retired, "item");
    if (kind == MoveKind::Removed && before != MoveKind::Fitted && before != MoveKind::Away)
        return refuse(Fault::NotFitted, "item");
    if (kind == MoveKind::Fitted && before == MoveKind::Fitted)
        return refuse(Fault::InTwoPlaces, "item");
    return {};
}

}  // namespace

Fittings::Fittings(std::span<const Move> moves) {
    std::vector<const Move*> sorted;
    sorted.reserve(moves.size());
    for (const Move& move : moves)
        sorted.push_back(&move);
    std::sort(sorted.begin(), sorted.end(), [](const Move* a, const Move* b) {
        return std::tie(a->date, a->part, a->entered, a->id) < std::tie(b->date, b->part, b->entered, b->id);
    });
    for (const Move* move : sorted) {
        const Moment when{move->date, move->part};
        if (moments_.empty() || moments_.back() != when)
            moments_.push_back(when);
        auto& spells = spells_[move->item];
        if (!spells.empty())
            spells.back().to = when;
        spells.push_back(
            {move->kind, move->machine, move->parent, move->position, when, std::nullopt, move->id.value()});
    }
    for (const auto& [item, spells] : spells_)
        for (const Spell& spell : spells)
            if (spell.kind == MoveKind::Fitted)
                positions_[{spell.machine, spell.parent}][spell.position].push_back(
                    {item, spell.from, spell.to});
    // Of two stays that begin at one moment the one that is over at once comes first.
    for (auto& [host, positions] : positions_)
        for (auto& [position, stays] : positions)
            std::stable_sort(stays.begin(), stays.end(), [](const Stay& a, const Stay& b) {
                return a.from != b.from ? a.from < b.from : a.to == a.from && b.to != b.from;
            });
}

std::span<const Spell> Fittings::spells(ItemId item) const {
    const auto known = spells_.find(item);
    return known == spells_.end() ? std::span<const Spell>{} : known->second;
}

std::optional<Spell> Fittings::placeOf(ItemId item, Moment when) const {
    const auto all = spells(item);
    const auto next =
        std::partition_point(all.begin(), all.end(), [&](const Spell& spell) { return spell.from <= when; });
    return next == all.begin() ? std::nullopt : std::optional(*std::prev(next));
}

template <class Visit>
void Fittings::eachFitted(ItemId item, const Window& window, Visit&& visit) const {
    const auto all = spells(item);
    auto spell = std::partition_point(all.begin(), all.end(),
                                      [&](const Spell& s) { return !endsAfter(s.to, window.from); });
    for (; spell != all.end() && endsAfter(window.to, spell->from); ++spell) {
        Window overlap{std::max(spell->from, window.from), spell->to};
        if (!overlap.to || (window.to && *window.to < *overlap.to))
            overlap.to = window.to;
        if (spell->kind == MoveKind::Fitted && endsAfter(overlap.to, overlap.from))
            visit(*spell, overlap);
    }
}

void Fittings::collect(ItemId item, const Window& window, std::vector<ItemId>& chain,
                       std::vector<MachineSpell>& found) const {
    // No two items hold each other at one moment (check refuses it); facts from elsewhere might.
    if (std::find(chain.begin(), chain.end(), item) != chain.end())
        return;
    chain.push_back(item);
    eachFitted(item, window, [&](const Spell& spell, const Window& overlap) {
        if (spell.machine) {
            found.push_back({*spell.machine, spell.position, overlap.from, overlap.to});
        } else if (spell.parent) {
            const std::size_t first = found.size();
            collect(*spell.parent, overlap, chain, found);
            for (std::size_t i = first; i < found.size(); ++i)
                found[i].path += "/" + spell.position;
        }
    });
    chain.pop_back();
}

std::vector<MachineSpell> Fittings::machineSpells(ItemId item) const {
    std::vector<MachineSpell> found;
    std::vector<ItemId> chain;
    collect(item, {kBeginning, std::nullopt}, chain, found);
    return found;
}

std::optional<ItemId> Fittings::at(const Host& host, std::string_view position, Moment when) const {
    const auto positions = positions_.find(host);
    if (positions == positions_.end())
        return std::nullopt;
    const auto stays = positions->second.find(position);
    if (stays == positions->second.end())
        return std::nullopt;
    const auto next = std::partition_point(stays->second.begin(), stays->second.end(),
                                           [&](const Stay& stay) { return stay.from <= when; });
    if (next == stays->second.begin() || !endsAfter(std::prev(next)->to, when))
        return std::nullopt;
    return std::prev(next)->item;
}

std::optional<ItemId> Fittings::at(MachineId machine, std::string_view path, Moment when) const {
    Host host{machine, std::nullopt};
    std::optional<ItemId> found;
    for (const std::string& position : base::split(path, '/')) {
        found = at(host, position, when);
        if (!found)
            return std::nullopt;
        host = {std::nullopt, found};
    }
    return found;
}

std::vector<std::pair<std::string, ItemId>> Fittings::on(const Host& host, Moment when) const {
    std::vector<std::pair<std::string, ItemId>> found;
    const auto positions = positions_.find(host);
    if (positions == positions_.end())
        return found;
    for (const auto& [position, stays] : positions->second)
        if (const auto item = at(host, position, when))
            found.emplace_back(position, *item);
    return found;
}

std::vector<std::pair<std::string, ItemId>> Fittings::on(MachineId machine, Moment when) const {
    return on(Host{machine, std::nullopt}, when);
}

std::vector<std::pair<std::string, ItemId>> Fittings::on(ItemId parent, Moment when) const {
    return on(Host{std::nullopt, parent}, when);
}

std::optional<ItemId> Fittings::lastAt(const Host& host, std::string_view position, Moment when) const {
    const auto positions = positions_.find(host);
    if (positions == positions_.end())
        return std::nullopt;
    const auto stays = positions->second.find(position);
    if (stays == positions->second.end() || when < stays->second.front().from)
        return std::nullopt;
    const auto later = std::partition_point(stays->second.begin(), stays->second.end(),
                                            [&](const Stay& stay) { return stay.from <= when; });
    return std::prev(later)->item;
}

std::optional<Fittings::Left> Fittings::missingOn(MachineId machine, std::span<const std::string> path,
                                                  Moment when) const {
    Host host{machine, std::nullopt};
    std::string way;
    for (const std::string& part : path) {
        way += (way.empty() ? "" : "/") + part;
        if (const auto next = at(host, part, when)) {
            host = {std::nullopt, next};
            continue;
        }
        const auto last = lastAt(host, part, when);
        return last ? std::optional(Left{*last, std::move(way), when}) : std::nullopt;
    }
    return std::nullopt;
}

std::optional<Fittings::Left> Fittings::leftFrom(MachineId machine, std::string_view path,
                                                 Moment when) const {
    const auto parts = base::split(path, '/');
    auto left = missingOn(machine, parts, when);
    if (!left)
        return std::nullopt;
    auto since = std::upper_bound(moments_.begin(), moments_.end(), when);
    while (since != moments_.begin() && missingOn(machine, parts, *std::prev(since)))
        --since;
    left->since = *since;
    return left;
}

// Unfitted, and not out of another machine meanwhile.
bool Fittings::liesFrom(ItemId item, const Host& host, std::string_view position, Moment when) const {
    const auto places = spells(item);
    const auto later =
        std::find_if(places.begin(), places.end(), [&](const Spell& spell) { return when < spell.from; });
    const auto fitted = std::find_if(std::make_reverse_iterator(later), places.rend(),
                                     [](const Spell& spell) { return spell.kind == MoveKind::Fitted; });
    return later != places.begin() && std::prev(later)->kind == MoveKind::Removed &&
           fitted != places.rend() && Host{fitted->machine, fitted->parent} == host &&
           fitted->position == position;
}

std::optional<ItemId> Fittings::lyingFrom(MachineId machine, std::string_view path, Moment when) const {
    Host host{machine, std::nullopt};
    bool lies = false;
    for (const std::string& part : base::split(path, '/')) {
        if (const auto next = at(host, part, when)) {
            host = {std::nullopt, next};
            continue;
        }
        const auto last = lastAt(host, part, when);
        if (!last)
            break;
        if (!liesFrom(*last, host, part, when))
            return std::nullopt;
        host = {std::nullopt, last};
        lies = true;
    }
    return lies ? host.parent : std::nullopt;
}

void Fittings::collectEmptied(const Host& host, const std::string& way, Moment when,
                              std::vector<std::string>& paths) const {
    const auto positions = positions_.find(host);
    if (positions == positions_.end())
        return;
    for (const auto& [position, stays] : positions->second) {
        const std::string path = way.empty() ? position : way + "/" + position;
        if (const auto item = at(host, position, when))
            collectEmptied({std::nullopt, item}, path, when, paths);
        else if (stays.front().from <= when)
            paths.push_back(path);
    }
}

std::vector<Fittings::Left> Fittings::emptied(MachineId machine, Moment when) const {
    std::vector<std::string> paths;
    collectEmptied({machine, std::nullopt}, {}, when, paths);
    std::vector<Left> all;
    for (const std::string& path : paths)
        if (auto left = leftFrom(machine, path, when))
            all.push_back(std::move(*left));
    return all;
}

bool Fittings::wasTaken(const Spell& place, Moment when) const {
    const auto positions = positions_.find({place.machine, place.parent});
    if (positions == positions_.end())
        return false;
    const auto stays = positions->second.find(place.position);
    return stays != positions->second.end() && stays->second.front().from < when;
}

bool Fittings::isInside(ItemId item, ItemId host, const Window& window, std::vector<ItemId>& chain) const {
    if (item == host)
        return true;
    if (std::find(chain.begin(), chain.end(), item) != chain.end())
        return false;
    chain.push_back(item);
    bool inside = false;
    eachFitted(item, window, [&](const Spell& spell, const Window& overlap) {
        inside = inside || (spell.parent && isInside(*spell.parent, host, overlap, chain));
    });
    chain.pop_back();
    return inside;
}

Result<void> Fittings::checkPlace(const Move& move, const Window& window) const {
    const bool oneHost = move.machine.has_value() != move.parent.has_value();
    if (!oneHost || move.position.empty() || move.position.find('/') != std::string::npos)
        return refuse(Fault::Malformed, "position", move.position);
    if (move.parent) {
        const auto parent = placeOf(*move.parent, window.from);
        if (parent && parent->kind == MoveKind::Retired)
            return refuse(Fault::Retired, "parent");
        std::vector<ItemId> chain;
        if (isInside(*move.parent, move.item, window, chain))
            return refuse(Fault::Cycle, "parent");
    }
    const auto positions = positions_.find({move.machine, move.parent});
    if (positions == positions_.end())
        return {};
    const auto stays = positions->second.find(move.position);
    if (stays == positions->second.end())
        return {};
    for (const Stay& stay : stays->second)
        if (stay.to != stay.from && endsAfter(stay.to, window.from) && endsAfter(window.to, stay.from))
            return refuse(Fault::PositionTaken, "position", move.position, stay.from.date.iso());
    return {};
}

Result<void> Fittings::check(const Move& move) const {
    const Moment when{move.date, move.part};
    const auto place = placeOf(move.item, when);
    if (auto fine = follows(place ? std::optional(place->kind) : std::nullopt, move.kind); !fine)
        return fine;
    Window window{when, std::nullopt};
    const auto all = spells(move.item);
    const auto next =
        std::partition_point(all.begin(), all.end(), [&](const Spell& spell) { return spell.from <= when; });
    if (next != all.end()) {
        if (!follows(move.kind, next->kind))
            return refuse(Fault::OutOfOrder, "date", move.date.iso(), next->from.date.iso());
        window.to = next->from;
    }
    return move.kind == MoveKind::Fitted ? checkPlace(move, window) : Result<void>{};
}

}  // namespace wm::items
