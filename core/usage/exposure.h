// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/calendar/date.h"
#include "core/units/quantity.h"
#include "core/usage/rows.h"

namespace wm::usage {

/// At least `low`, likely `best`, at most `high`; no `high` = nobody can say how much more.
/// low <= best <= high always.
template <class Q>
struct Bracket {
    Q low{};
    Q best{};
    std::optional<Q> high{Q{}};

    static Bracket exactly(Q value) { return {value, value, value}; }
    [[nodiscard]] bool isExact() const { return high && low == *high; }

    Bracket& operator+=(const Bracket& other) {
        low += other.low;
        best += other.best;
        if (high && other.high)
            *high += *other.high;
        else
            high.reset();
        return *this;
    }
    friend Bracket operator+(Bracket a, const Bracket& b) { return a += b; }
    friend bool operator==(const Bracket&, const Bracket&) = default;
};
using HoursBracket = Bracket<units::Hours>;
using MetresBracket = Bracket<units::Metres>;

/// How the hours of an atom came to be known.
enum class Known : std::uint8_t {
    Noted,       ///< the rider's note, not (or not yet) bounded by readings
    Metered,     ///< note and meter agree, or the meter alone says it
    ScaledDown,  ///< notes between two readings added up to more than the meter
    ScaledUp,    ///< notes fell short by no more than the tolerance
    Unlogged,    ///< the meter moved more than anybody noted
    Past         ///< before the file knew the machine or item
};

enum class AtomKind : std::uint8_t { Outing, Unlogged, Wash, Crash, Past };

/// A dated piece of use of one machine. An outing, wash or crash has from == to. An Unlogged atom was ridden
/// at some time after moment `from` and up to moment `to`. A Past atom ends at `to`.
struct Atom {
    AtomKind kind = AtomKind::Outing;
    calendar::Moment from{};
    calendar::Moment to{};
    HoursBracket hours{};
    MetresBracket distance{};
    std::int64_t outings = 0;
    std::int64_t starts = 0;
    std::int64_t washes = 0;
    std::int64_t pressureWashes = 0;
    std::int64_t crashes = 0;
    bool mud = false;  ///< mud or water underfoot that day
    Ground ground = Ground::Unstated;
    Pace pace = Pace::Unstated;
    Known known = Known::Noted;
    std::int64_t source = 0;  ///< id of the fact: outing, wash, crash, or the reading that closed the gap

    friend bool operator==(const Atom&, const Atom&) = default;
};

/// Everything that says how one machine was used. Only rows of that machine, struck ones left out, in any
/// order.
struct UseFacts {
    std::vector<HourReading> hourReadings;
    std::vector<DistanceReading> distanceReadings;
    std::vector<Outing> outings;
    std::vector<Wash> washes;
    std::vector<Crash> crashes;
};

/// What something has behind it over a period.
struct Exposure {
    HoursBracket hours{};
    MetresBracket distance{};
    std::int64_t outings = 0;
    std::int64_t starts = 0;
    std::int64_t washes = 0;
    std::int64_t pressureWashes = 0;
    std::int64_t mudDays = 0;
    std::int64_t crashes = 0;

    Exposure& operator+=(const Exposure& other);
    friend bool operator==(const Exposure&, const Exposure&) = default;
};

/// The atoms of one machine, by date. Rules (design of exposure):
/// - Between two readings the metered difference is the truth. Noted hours that add up to more are scaled
/// down
///   to it; that fall short by no more than 0.1 h + 5 % of the noted hours per outing are scaled up; beyond
///   that the rest is one Unlogged atom over the interval. Shares are whole hundredths by largest remainder.
/// - An outing without noted hours takes the metered remainder of its interval, shared evenly; without a
/// second
///   reading it has a bracket from 0 with best = the machine's own mean outing (or 0 if there is none) and no
///   high.
/// - Replaced, reset, rolled-over meters start a segment (what the old one counted up to `before` still
/// counts);
///   between Stopped and Resumed/Replaced noted hours stand by themselves. After the last reading they do
///   too.
/// - A reading counts at its moment: riding of the same day is before a reading taken AfterRiding.
/// - The same for distance, with a tolerance of 1 km + 5 % an outing.
/// Atoms of washes and crashes carry only their own count. Mud = ground Mud or Water.
std::vector<Atom> atomsOf(const UseFacts& facts);

/// Exposure strictly after `after` (nothing: from the beginning) and up to and including `upTo`. An atom that
/// straddles an end enters the bracket: low without it, high with the whole of it, best by its share of days.
Exposure exposure(std::span<const Atom> atoms, std::optional<calendar::Moment> after, calendar::Moment upTo);

/// Does `reading` follow from those before it? Errors: MeterRunsBack (a lower figure and no word why),
/// MeterJumps (more than 24 h a day since the last reading), Negative.
base::Result<void> checkReading(const UseFacts& facts, const HourReading& reading);
base::Result<void> checkReading(const UseFacts& facts, const DistanceReading& reading);

}  // namespace wm::usage
