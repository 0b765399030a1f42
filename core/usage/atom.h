// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

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
    Noted,       ///< the rider's note as it stands: no readings around it, or they say still more
    Assumed,     ///< ridden, but neither noted nor metered: a bracket about the machine's mean outing
    Metered,     ///< note and meter agree, or the meter alone says it
    ScaledDown,  ///< notes between two readings added up to more than the meter
    ScaledUp,    ///< notes fell short by no more than the tolerance
    Unlogged,    ///< the meter moved more than anybody noted
    AtMost,      ///< the same, of a meter that counts the van as well: from none to all of it was riding
    Past         ///< before the file knew the machine or item
};

enum class AtomKind : std::uint8_t { Outing, Unlogged, Wash, Crash, Past };

/// From just after one moment up to another.
struct Stretch {
    calendar::Moment from{};
    calendar::Moment to{};
    friend bool operator==(const Stretch&, const Stretch&) = default;
};

/// A dated piece of use of one machine. An outing or crash stands at (date, Riding), a wash at (date,
/// AfterRiding); each has from == to. An Unlogged atom was ridden at some time after moment `from` and up to
/// moment `to`. A Past atom ends at `to`; nobody knows when it began.
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
    std::int64_t mud = 0;  ///< 1: mud or water underfoot that day
    Ground ground = Ground::Unstated;
    Pace pace = Pace::Unstated;
    Known known = Known::Noted;
    std::int64_t source = 0;  ///< id of the fact: outing, wash, crash, or the reading that closed the gap
    /// Of a part of an Unlogged atom the whole, so that a part of a part is shared out like a part of the
    /// whole; what the meter ran in the whole is the high end.
    std::optional<Stretch> cutFrom{};

    friend bool operator==(const Atom&, const Atom&) = default;
};

/// What something has behind it over a period. Mud days are days: two outings in one day's mud are one.
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

/// How a piece comes with the riding ahead: what the outlook learns of it, and when within a day it is there.
enum class Comes : std::uint8_t {
    EachOuting,  ///< one an outing, always
    AtRaces,     ///< so many a race
    AnyOuting,   ///< so many an outing of any kind, by chance
    AsMud,       ///< with the mud of that outing; two of one day are one
    AsWash       ///< after riding, the more surely the muddier it was
};

/// What the rider notes of a piece at an outing, under the name of its column. Forms, checks and the headless
/// verb ask for each of these without knowing it.
struct Noted {
    std::string_view field;
    std::int64_t Outing::*amount;
    std::string_view what;  ///< as the help of the headless verb says it
};

/// What is summed up in whole pieces, and from where: the one place that says it.
struct PieceTraits {
    Piece of;
    std::int64_t Atom::*inAtom;
    std::int64_t Exposure::*behind;
    Comes comes;
    std::optional<Noted> noted{};  ///< nothing: it has an entry of its own, or comes of itself
};
inline constexpr std::array kPieces{
    PieceTraits{Piece::Outings, &Atom::outings, &Exposure::outings, Comes::EachOuting},
    PieceTraits{Piece::Starts, &Atom::starts, &Exposure::starts, Comes::AtRaces,
                Noted{"starts", &Outing::starts, "Race starts."}},
    PieceTraits{Piece::Washes, &Atom::washes, &Exposure::washes, Comes::AsWash},
    PieceTraits{Piece::MudDays, &Atom::mud, &Exposure::mudDays, Comes::AsMud},
    PieceTraits{Piece::Crashes, &Atom::crashes, &Exposure::crashes, Comes::AnyOuting},
    PieceTraits{Piece::PressureWashes, &Atom::pressureWashes, &Exposure::pressureWashes, Comes::AsWash},
};
static_assert(base::isWholeTable(kPieces), "each piece has its row, in order");
static_assert(sizeof(Exposure) ==
                  sizeof(HoursBracket) + sizeof(MetresBracket) + kPieces.size() * sizeof(std::int64_t),
              "whatever else an exposure holds is summed up by no row");

constexpr const PieceTraits& traitsOf(Piece piece) {
    return kPieces[static_cast<std::size_t>(piece)];
}

}  // namespace wm::usage
