// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/upkeep/subject.h"

#include <utility>

#include "core/base/text.h"

namespace wm::upkeep {

using calendar::Moment;
using items::MoveKind;
using items::Spell;

namespace {

// Facts from elsewhere may hold each other in a ring; no machine is as deep as this.
constexpr int kDeepest = 20;

}  // namespace

bool isAtOrIn(std::string_view path, std::string_view whole) {
    return path == whole ||
           (path.size() > whole.size() && path.starts_with(whole) && path[whole.size()] == '/');
}

Subject subjectAt(const items::Fittings& fittings, MachineId machine, std::string_view position,
                  Moment when) {
    Subject subject{.machine = machine, .position = std::string(position)};
    if (position.empty())
        return subject;
    subject.item = fittings.at(machine, position, when);
    if (subject.item)
        return subject;
    subject.empty = fittings.leftFrom(machine, position, when);
    if (subject.empty)
        return subject;
    for (auto end = position.rfind('/'); end != std::string_view::npos && !subject.item;
         end = position.substr(0, end).rfind('/'))
        subject.item = fittings.at(machine, position.substr(0, end), when);
    return subject;
}

Whereabouts::Whereabouts(const items::Fittings& fittings, ItemOf itemOf)
    : fittings_(fittings), itemOf_(std::move(itemOf)) {}

std::optional<Spell> Whereabouts::assumedBefore(ItemId item) const {
    const auto spells = fittings_.spells(item);
    const items::Item* card = itemOf_(item);
    if (spells.empty() || card == nullptr || card->startedNew)
        return std::nullopt;
    const Spell& first = spells.front();
    const bool cameWithIt = first.kind == MoveKind::Fitted && first.from.date == card->since &&
                            !fittings_.wasTaken(first, first.from);
    return cameWithIt ? std::optional(first) : std::nullopt;
}

std::optional<items::Carriage> Whereabouts::untrackedSince(ItemId item, Moment after) const {
    const auto first = assumedBefore(item);
    const auto place = first && after < first->from ? of(item, after) : std::nullopt;
    if (!place)
        return std::nullopt;
    return items::Carriage{
        place->machine, after, first->from, {{place->machine, place->path, after, first->from}}};
}

std::optional<Spell> Whereabouts::placeOf(ItemId item, Moment when) const {
    if (auto place = fittings_.placeOf(item, when))
        return place;
    return assumedBefore(item);
}

std::optional<Whereabouts::Place> Whereabouts::of(ItemId item, Moment when) const {
    std::string path;
    for (int depth = 0; depth < kDeepest; ++depth) {
        const auto place = placeOf(item, when);
        if (!place || place->kind != MoveKind::Fitted)
            return std::nullopt;
        path = path.empty() ? place->position : place->position + "/" + path;
        if (place->machine)
            return Place{*place->machine, std::move(path)};
        item = *place->parent;
    }
    return std::nullopt;
}

std::optional<ItemId> Whereabouts::wholeOf(ItemId item, Moment when) const {
    const auto place = placeOf(item, when);
    return place && place->kind == MoveKind::Fitted ? place->parent : std::nullopt;
}

bool Whereabouts::isPartOf(ItemId part, ItemId whole, Moment when) const {
    for (int depth = 0; depth < kDeepest; ++depth) {
        if (part == whole)
            return true;
        const auto place = placeOf(part, when);
        if (!place || !place->parent)
            return false;
        part = *place->parent;
    }
    return false;
}

bool concerns(const Record& record, std::string_view position, ItemId item, const Whereabouts& whereabouts) {
    const Moment when{record.date, record.part};
    const auto on =
        record.item || position.empty() ? record.item : whereabouts.lyingFrom(record.machine, position, when);
    if (on)
        return whereabouts.isPartOf(*on, item, when) || whereabouts.isPartOf(item, *on, when);
    const auto place = whereabouts.of(item, when);
    return place && place->machine == record.machine &&
           (position.empty() || isAtOrIn(position, place->path) || isAtOrIn(place->path, position));
}

}  // namespace wm::upkeep
