// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/usage/exposure.h"

#include <algorithm>
#include <set>

namespace wm::usage {

using calendar::DayPart;
using calendar::Moment;

namespace {

// What of `best` lies in the first `part` of `all` riding times, halves up: 5 h, first of 2 times: 2.5 h.
template <class Q>
Q shareUpTo(Q best, std::int64_t part, std::int64_t all) {
    return Q{(2 * best.count() * part + all) / (2 * all)};
}

template <class Q>
Bracket<Q> bracketOf(const Bracket<Q>& whole, std::int64_t before, std::int64_t upTo, std::int64_t all) {
    return {Q{0}, shareUpTo(whole.best, upTo, all) - shareUpTo(whole.best, before, all), whole.high};
}

bool isPart(const Atom& atom) {
    return atom.kind == AtomKind::Unlogged && !(atom.hours.isExact() && atom.distance.isExact());
}

void add(Exposure& sum, const Atom& atom) {
    sum.hours += atom.hours;
    sum.distance += atom.distance;
    sum.outings += atom.outings;
    sum.starts += atom.starts;
    sum.washes += atom.washes;
    sum.pressureWashes += atom.pressureWashes;
    sum.crashes += atom.crashes;
}

}  // namespace

Exposure& Exposure::operator+=(const Exposure& other) {
    hours += other.hours;
    distance += other.distance;
    outings += other.outings;
    starts += other.starts;
    washes += other.washes;
    pressureWashes += other.pressureWashes;
    mudDays += other.mudDays;
    crashes += other.crashes;
    return *this;
}

std::int64_t ridingTimes(Moment from, Moment to) {
    const auto upTo = [](Moment moment) {
        return std::int64_t{moment.date.daysSinceEpoch()} + (moment.part >= DayPart::Riding ? 1 : 0);
    };
    return std::max(upTo(to) - upTo(from), std::int64_t{0});
}

std::optional<Atom> partOf(const Atom& unlogged, std::optional<Moment> after, Moment upTo) {
    const std::int64_t all = ridingTimes(unlogged.from, unlogged.to);
    if (all == 0) {
        const bool inside = (!after || *after < unlogged.to) && unlogged.to <= upTo;
        return inside ? std::optional(unlogged) : std::nullopt;
    }
    Atom part = unlogged;
    part.from = after ? std::max(*after, unlogged.from) : unlogged.from;
    part.to = std::min(upTo, unlogged.to);
    const std::int64_t first = ridingTimes(unlogged.from, part.from);
    const std::int64_t last = ridingTimes(unlogged.from, part.to);
    if (last <= first)
        return std::nullopt;
    if (last - first == all)
        return unlogged;
    part.hours = bracketOf(unlogged.hours, first, last, all);
    part.distance = bracketOf(unlogged.distance, first, last, all);
    return part;
}

Exposure exposure(std::span<const Atom> atoms, std::optional<Moment> after, Moment upTo) {
    Exposure sum;
    std::set<std::int64_t> stretches;  // whose high end is counted
    std::optional<calendar::Date> lastMud;
    const auto first = !after ? atoms.begin()
                              : std::partition_point(atoms.begin(), atoms.end(),
                                                     [&](const Atom& atom) { return atom.to <= *after; });
    for (auto at = first; at != atoms.end(); ++at) {
        if (at->kind == AtomKind::Unlogged) {
            auto part = partOf(*at, after, upTo);
            if (!part)
                continue;
            if (isPart(*part) && !stretches.insert(part->source).second) {
                part->hours.high = units::Hours{0};
                part->distance.high = units::Metres{0};
            }
            add(sum, *part);
        } else if (at->to <= upTo) {
            Atom atom = *at;
            if (atom.kind == AtomKind::Past && after) {
                atom.hours.low = units::Hours{0};
                atom.distance.low = units::Metres{0};
            }
            add(sum, atom);
            if (atom.mud && lastMud != atom.to.date) {
                ++sum.mudDays;
                lastMud = atom.to.date;
            }
        }
    }
    return sum;
}

}  // namespace wm::usage
