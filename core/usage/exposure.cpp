// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/usage/exposure.h"

#include <algorithm>
#include <map>

namespace wm::usage {

using calendar::DayPart;
using calendar::Moment;

namespace {

// What of `best` lies in the first `part` of `all` riding times, halves up: 5 h, first of 2 times: 2.5 h.
template <class Q>
Q shareUpTo(Q best, std::int64_t part, std::int64_t all) {
    return Q{(2 * best.count() * part + all) / (2 * all)};
}

// A part of an unlogged whole, whose amount is exact and stays the high end of every part.
template <class Q>
Bracket<Q> bracketOf(Q whole, std::int64_t before, std::int64_t upTo, std::int64_t all) {
    return {Q{0}, shareUpTo(whole, upTo, all) - shareUpTo(whole, before, all), whole};
}

void add(Exposure& sum, const Atom& atom) {
    sum.hours += atom.hours;
    sum.distance += atom.distance;
    for (const PieceTraits& piece : kPieces)
        if (piece.comes != Comes::AsMud)
            sum.*piece.behind += atom.*piece.inAtom;
}

}  // namespace

Exposure& Exposure::operator+=(const Exposure& other) {
    hours += other.hours;
    distance += other.distance;
    for (const PieceTraits& piece : kPieces)
        this->*piece.behind += other.*piece.behind;
    return *this;
}

std::int64_t ridingTimes(Moment from, Moment to) {
    const auto upTo = [](Moment moment) {
        return std::int64_t{moment.date.daysSinceEpoch()} + (moment.part >= DayPart::Riding ? 1 : 0);
    };
    return std::max(upTo(to) - upTo(from), std::int64_t{0});
}

std::optional<Atom> partOf(const Atom& unlogged, std::optional<Moment> after, Moment upTo) {
    const std::int64_t own = ridingTimes(unlogged.from, unlogged.to);
    if (own == 0) {
        const bool inside = (!after || *after < unlogged.to) && unlogged.to <= upTo;
        return inside ? std::optional(unlogged) : std::nullopt;
    }
    Atom part = unlogged;
    part.from = after ? std::max(*after, unlogged.from) : unlogged.from;
    part.to = std::min(upTo, unlogged.to);
    const std::int64_t times = ridingTimes(part.from, part.to);
    if (times == 0)
        return std::nullopt;
    if (times == own)
        return unlogged;
    part.cutFrom = unlogged.cutFrom.value_or(Stretch{unlogged.from, unlogged.to});
    const std::int64_t all = ridingTimes(part.cutFrom->from, part.cutFrom->to);
    const std::int64_t first = ridingTimes(part.cutFrom->from, part.from);
    part.hours = bracketOf(*unlogged.hours.high, first, first + times, all);
    part.distance = bracketOf(*unlogged.distance.high, first, first + times, all);
    if (unlogged.known == Known::AtMost)
        part.hours.best = units::Hours{0};
    return part;
}

namespace {

// The parts of unlogged stretches that were met so far, in riding times, by what closed the stretch.
using Covered = std::map<std::int64_t, std::int64_t>;

// Parts of one stretch together: the high end once, and nothing open once they make up the whole.
void join(Atom& part, Covered& covered) {
    std::int64_t& times = covered[part.source];
    const bool isFirst = times == 0;
    times += ridingTimes(part.from, part.to);
    if (times == ridingTimes(part.cutFrom->from, part.cutFrom->to)) {
        if (part.known != Known::AtMost)
            part.hours.low = *part.hours.high;
        part.distance.low = *part.distance.high;
    }
    if (!isFirst) {
        part.hours.high = units::Hours{0};
        part.distance.high = units::Metres{0};
    }
}

// Visits what each atom has after one moment and up to another, so that the visited add up to the whole.
template <class Visit>
void eachPart(std::span<const Atom> atoms, std::optional<Moment> after, Moment upTo, Visit&& visit) {
    Covered covered;
    const auto first = !after ? atoms.begin()
                              : std::partition_point(atoms.begin(), atoms.end(),
                                                     [&](const Atom& atom) { return atom.to <= *after; });
    for (auto at = first; at != atoms.end(); ++at) {
        if (at->kind == AtomKind::Unlogged) {
            auto part = partOf(*at, after, upTo);
            if (!part)
                continue;
            if (part->cutFrom)
                join(*part, covered);
            visit(*part);
        } else if (at->to <= upTo) {
            if (at->kind != AtomKind::Past || !after) {
                visit(*at);
                continue;
            }
            Atom past = *at;
            past.hours.low = units::Hours{0};
            past.distance.low = units::Metres{0};
            visit(past);
        }
    }
}

}  // namespace

Exposure exposure(std::span<const Atom> atoms, std::optional<Moment> after, Moment upTo) {
    Exposure sum;
    std::optional<calendar::Date> lastMud;
    eachPart(atoms, after, upTo, [&](const Atom& atom) {
        add(sum, atom);
        if (atom.mud > 0 && lastMud != atom.to.date) {
            ++sum.mudDays;
            lastMud = atom.to.date;
        }
    });
    return sum;
}

std::vector<Atom> partsOf(std::span<const Atom> atoms, std::optional<Moment> after, Moment upTo) {
    std::vector<Atom> parts;
    eachPart(atoms, after, upTo, [&parts](const Atom& atom) { parts.push_back(atom); });
    return parts;
}

std::int64_t permilleOf(std::span<const HourWeight> weights, const Atom& atom) {
    return atom.kind == AtomKind::Past ? 1000 : permilleOf(weights, atom.ground, atom.pace);
}

std::int64_t permilleOf(std::span<const HourWeight> weights, Ground ground, Pace pace) {
    const auto fits = [&](const HourWeight& weight) {
        return weight.ground.value_or(ground) == ground && weight.pace.value_or(pace) == pace;
    };
    const auto found = std::find_if(weights.begin(), weights.end(), fits);
    return found == weights.end() ? 1000 : found->permille;
}

WeightedBracket weightedHours(std::span<const Atom> atoms, std::span<const HourWeight> weights,
                              std::optional<Moment> after, Moment upTo) {
    WeightedBracket sum;
    eachPart(atoms, after, upTo, [&](const Atom& atom) {
        const std::int64_t permille = permilleOf(weights, atom);
        const auto& hours = atom.hours;
        sum += WeightedBracket{hours.low.count() * permille, hours.best.count() * permille,
                               hours.high ? std::optional(hours.high->count() * permille) : std::nullopt};
    });
    return sum;
}

HoursBracket roundedHours(const WeightedBracket& hours) {
    const auto rounded = [](std::int64_t fine) { return units::Hours{(fine + 500) / 1000}; };
    return {rounded(hours.low), rounded(hours.best),
            hours.high ? std::optional(rounded(*hours.high)) : std::nullopt};
}

}  // namespace wm::usage
