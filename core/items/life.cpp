// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/items/fittings.h"

namespace wm::items {

using calendar::DayPart;
using calendar::Moment;
using usage::Atom;

namespace {

// What of one atom falls into the stretches, which are in order and apart.
void take(const Atom& atom, const std::vector<Carriage>& stretches, std::vector<Atom>& taken) {
    auto stretch = std::partition_point(stretches.begin(), stretches.end(), [&](const Carriage& s) {
        return s.to && (atom.from == atom.to ? *s.to < atom.to : *s.to <= atom.from);
    });
    for (; stretch != stretches.end() && stretch->from < atom.to; ++stretch) {
        if (atom.kind != usage::AtomKind::Unlogged)
            taken.push_back(atom);
        else if (const auto part = usage::partOf(atom, stretch->from, stretch->to.value_or(atom.to)))
            taken.push_back(*part);
    }
}

template <class Card>
std::optional<Atom> pastOf(const Card& card) {
    if (card.startedNew)
        return std::nullopt;
    Atom past;
    past.kind = usage::AtomKind::Past;
    past.from = past.to = Moment{card.since, DayPart::BeforeRiding};
    past.hours = {card.pastLow, card.pastBest, card.pastHigh};
    past.distance.high.reset();
    past.known = usage::Known::Past;
    past.source = card.id.value();
    return past;
}

// What the meter tells of the time before the first day here is a part of the past that was stated.
void takeOutMetered(Atom& past, std::span<const Atom> atoms) {
    Moment first = past.to;
    for (const Atom& atom : atoms)
        first = std::min(first, atom.from);
    if (first == past.to)
        return;
    past.hours = without(past.hours, usage::exposure(atoms, std::nullopt, past.to).hours);
    past.from = past.to = first;
}

std::vector<Atom> inOrder(std::vector<Atom> atoms) {
    std::stable_sort(atoms.begin(), atoms.end(), [](const Atom& a, const Atom& b) { return a.to < b.to; });
    return atoms;
}

}  // namespace

std::vector<Carriage> carriagesOf(ItemId item, const Fittings& fittings) {
    std::vector<Carriage> carriages;
    std::map<MachineId, std::size_t> last;
    for (const MachineSpell& spell : fittings.machineSpells(item)) {
        const auto known = last.find(spell.machine);
        if (known != last.end() && carriages[known->second].to == spell.from) {
            carriages[known->second].to = spell.to;
            carriages[known->second].spells.push_back(spell);
            continue;
        }
        last[spell.machine] = carriages.size();
        carriages.push_back({spell.machine, spell.from, spell.to, {spell}});
    }
    return carriages;
}

std::vector<Atom> atomsOf(const Item& item, const Fittings& fittings, const AtomsOfMachine& machineAtoms) {
    std::vector<Atom> atoms;
    if (const auto past = pastOf(item))
        atoms.push_back(*past);
    std::map<MachineId, std::vector<Carriage>> carriages;
    for (Carriage& carriage : carriagesOf(item.id, fittings))
        carriages[carriage.machine].push_back(std::move(carriage));
    for (const auto& [machine, stretches] : carriages)
        for (const Atom& atom : machineAtoms(machine))
            take(atom, stretches, atoms);
    return inOrder(std::move(atoms));
}

usage::HoursBracket without(const usage::HoursBracket& whole, const usage::HoursBracket& part) {
    using units::Hours;
    const auto less = [](Hours all, Hours some) { return std::max(all - some, Hours{0}); };
    return {part.high ? less(whole.low, *part.high) : Hours{0}, less(whole.best, part.best),
            whole.high ? std::optional(less(*whole.high, part.low)) : std::nullopt};
}

std::vector<Atom> withPast(const Machine& machine, std::span<const Atom> atoms) {
    std::vector<Atom> all;
    all.reserve(atoms.size() + 1);
    if (auto past = pastOf(machine)) {
        takeOutMetered(*past, atoms);
        all.push_back(*past);
    }
    all.insert(all.end(), atoms.begin(), atoms.end());
    return inOrder(std::move(all));
}

}  // namespace wm::items
