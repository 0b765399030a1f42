// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/items/fittings.h"

namespace wm::items {

using calendar::DayPart;
using calendar::Moment;
using usage::Atom;

namespace {

struct Stretch {
    Moment from{};
    std::optional<Moment> to;
};

// Off and on again at one moment, or from one engine of a machine into the next, is one stretch with it.
std::map<MachineId, std::vector<Stretch>> stretchesOf(const std::vector<MachineSpell>& spells) {
    std::map<MachineId, std::vector<Stretch>> stretches;
    for (const MachineSpell& spell : spells) {
        auto& own = stretches[spell.machine];
        if (!own.empty() && own.back().to == spell.from)
            own.back().to = spell.to;
        else
            own.push_back({spell.from, spell.to});
    }
    return stretches;
}

// What of one atom falls into the stretches, which are in order and apart.
void take(const Atom& atom, const std::vector<Stretch>& stretches, std::vector<Atom>& taken) {
    auto stretch = std::partition_point(stretches.begin(), stretches.end(), [&](const Stretch& s) {
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

std::vector<Atom> inOrder(std::vector<Atom> atoms) {
    std::stable_sort(atoms.begin(), atoms.end(), [](const Atom& a, const Atom& b) { return a.to < b.to; });
    return atoms;
}

}  // namespace

std::vector<Atom> atomsOf(const Item& item, const Fittings& fittings, const AtomsOfMachine& machineAtoms) {
    std::vector<Atom> atoms;
    if (const auto past = pastOf(item))
        atoms.push_back(*past);
    for (const auto& [machine, stretches] : stretchesOf(fittings.machineSpells(item.id)))
        for (const Atom& atom : machineAtoms(machine))
            take(atom, stretches, atoms);
    return inOrder(std::move(atoms));
}

std::vector<Atom> withPast(const Machine& machine, std::span<const Atom> atoms) {
    std::vector<Atom> all;
    all.reserve(atoms.size() + 1);
    if (const auto past = pastOf(machine))
        all.push_back(*past);
    all.insert(all.end(), atoms.begin(), atoms.end());
    return inOrder(std::move(all));
}

}  // namespace wm::items
