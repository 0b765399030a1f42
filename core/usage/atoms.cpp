// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <tuple>

#include "core/usage/meter_doubts.h"
#include "core/usage/metering.h"

namespace wm::usage {

using calendar::DayPart;
using calendar::Moment;

namespace {

constexpr Tolerance kHoursTolerance{kNoteTolerance.count()};
constexpr Tolerance kDistanceTolerance{1'000};  // 1 km

template <class Fact>
std::vector<const Fact*> byTime(const std::vector<Fact>& facts) {
    std::vector<const Fact*> sorted;
    sorted.reserve(facts.size());
    for (const Fact& fact : facts)
        sorted.push_back(&fact);
    std::sort(sorted.begin(), sorted.end(), [](const Fact* a, const Fact* b) {
        return std::tie(a->date, a->entered, a->id) < std::tie(b->date, b->entered, b->id);
    });
    return sorted;
}

template <class Unit>
Metered meterOf(const std::vector<ReadingOf<Unit>>& readings, const std::vector<const Outing*>& outings,
                std::optional<Unit> Outing::*noted, Tolerance tolerance) {
    std::vector<Note> notes;
    notes.reserve(outings.size());
    for (const Outing* outing : outings) {
        const auto& amount = outing->*noted;
        notes.push_back({{outing->date, DayPart::Riding},
                         amount ? std::optional(amount->count()) : std::nullopt,
                         outing->id.value(),
                         outing->entered});
    }
    return meter(figuresOf(readings), notes, tolerance);
}

template <class Unit>
Bracket<Unit> bracketOf(const Use& use) {
    const auto& amount = use.amount;
    return {Unit{amount.low.count()}, Unit{amount.best.count()},
            amount.high ? std::optional(Unit{amount.high->count()}) : std::nullopt};
}

Atom outingAtom(const Outing& outing, const Use& hours, const Use& distance) {
    Atom atom;
    atom.kind = AtomKind::Outing;
    atom.from = atom.to = Moment{outing.date, DayPart::Riding};
    atom.hours = bracketOf<units::Hours>(hours);
    atom.distance = bracketOf<units::Metres>(distance);
    atom.outings = 1;
    for (const PieceTraits& piece : kPieces)
        if (piece.noted)
            atom.*piece.inAtom = outing.*piece.noted->amount;
    atom.mud = isMuddy(outing.ground) ? 1 : 0;
    atom.ground = outing.ground;
    atom.pace = outing.pace;
    atom.known = hours.known;
    atom.source = outing.id.value();
    return atom;
}

Atom unloggedAtom(const Rest& rest) {
    Atom atom;
    atom.kind = AtomKind::Unlogged;
    atom.from = rest.from;
    atom.to = rest.to;
    atom.known = Known::Unlogged;
    atom.source = rest.closedBy;
    return atom;
}

Atom pointAtom(AtomKind kind, Moment at, std::int64_t source) {
    Atom atom;
    atom.kind = kind;
    atom.from = atom.to = at;
    atom.source = source;
    return atom;
}

}  // namespace

std::vector<Atom> atomsOf(const UseFacts& facts, MeterCounts counts) {
    const bool isUpperBound = counts == MeterCounts::TransportToo;
    const auto outings = byTime(facts.outings);
    const Metered hours =
        meterOf(facts.hourReadings, outings, &Outing::hours, Tolerance{kHoursTolerance.base, isUpperBound});
    const Metered distance = meterOf(facts.distanceReadings, outings, &Outing::distance, kDistanceTolerance);

    std::vector<Atom> atoms;
    for (std::size_t i = 0; i < outings.size(); ++i)
        atoms.push_back(outingAtom(*outings[i], hours.uses[i], distance.uses[i]));
    for (const Rest& rest : hours.rests) {
        atoms.push_back(unloggedAtom(rest));
        const units::Hours all{rest.amount};
        atoms.back().hours =
            isUpperBound ? HoursBracket{units::Hours{0}, units::Hours{0}, all} : HoursBracket::exactly(all);
        if (isUpperBound)
            atoms.back().known = Known::AtMost;
    }
    for (const Rest& rest : distance.rests) {
        atoms.push_back(unloggedAtom(rest));
        atoms.back().distance = MetresBracket::exactly(units::Metres{rest.amount});
    }
    for (const Wash* wash : byTime(facts.washes)) {
        atoms.push_back(pointAtom(AtomKind::Wash, {wash->date, DayPart::AfterRiding}, wash->id.value()));
        atoms.back().washes = 1;
        atoms.back().pressureWashes = wash->pressure ? 1 : 0;
    }
    for (const Crash* crash : byTime(facts.crashes)) {
        atoms.push_back(pointAtom(AtomKind::Crash, {crash->date, DayPart::Riding}, crash->id.value()));
        atoms.back().crashes = 1;
    }
    std::stable_sort(atoms.begin(), atoms.end(), [](const Atom& a, const Atom& b) { return a.to < b.to; });
    return atoms;
}

}  // namespace wm::usage
