// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/outlook/ground.h"
#include "core/outlook/laws.h"
#include "core/outlook/rows.h"
#include "core/upkeep/countdown.h"
#include "core/usage/exposure.h"

namespace wm::outlook {

struct EventAhead {
    EventId id{};
    std::string name{};
    EventKind kind = EventKind::Race;
    calendar::Date first{};
    calendar::Date last{};
};

/// How far the habit can be trusted. Steady: as far as its uncertainty says, which the chances hold.
/// Changed: its last five weeks don't go with those before; Resting: no riding for eight weeks up to now, so
/// it says what comes when riding goes on; in both the chances may be wider off than they say. Unknown: fewer
/// than three outings, or no whole week, are known: chances are not to be shown.
enum class Trust : std::uint8_t { Steady, Changed, Resting, Unknown };

/// What lies ahead of one machine: its entered events in order, and its habit. Every page that looks ahead
/// asks this one value, through the functions below or through `Odds`. It is one generative model: each day
/// of an event is an outing; the habit gives a Poisson count of outings in the days of weeks without an
/// event; each outing brings hours, metres, starts, washes, mud and crashes by the laws below, independently
/// of each other but for washes and the ground, which go with mud.
struct Ahead {
    calendar::Date today{};
    std::vector<EventAhead> events{};
    double habitOutingsPerWeek = 0;  ///< in weeks without an event
    std::int64_t weeksSeen = 0;      ///< how much history the habit rests on; 0 = the rate is known exactly
    double timesAsOften = 1;         ///< what if: the habit goes so much faster
    AmountLaw practiceHours{};
    AmountLaw raceHours{};
    AmountLaw metres{};  ///< of an outing of any kind
    std::array<PieceLaw, usage::kPieces.size()> pieces{};
    double washWithMud = 0;      ///< 0 = washed whether in mud or not, 1 = as much together as can be
    GroundMix practiceGround{};  ///< what a task that weights its hours makes of them
    GroundMix raceGround{};
    Trust trust = Trust::Steady;

    /// What an outing of any kind, or a race, brings of a piece; of the outings themselves nothing is
    /// learned.
    [[nodiscard]] const PieceLaw& of(usage::Piece piece) const {
        return pieces[static_cast<std::size_t>(piece)];
    }
    [[nodiscard]] PieceLaw& of(usage::Piece piece) { return pieces[static_cast<std::size_t>(piece)]; }
    [[nodiscard]] CountLaw habit() const { return {habitOutingsPerWeek, static_cast<double>(weeksSeen)}; }
};

/// The habit is learned from the whole weeks (Monday to Sunday) of the last year in which this machine was
/// entered for no event, the current week left out. A pause, eight or more weeks in a row without riding or
/// event (a winter, an injury), is no part of the habit, at the end no less than in the middle; of the weeks
/// that remain the newest 26 count. Unlogged hours count as outings of mean length. Means an outing come from
/// the whole last year; a race is an outing with starts, or one on a race day that the machine was entered
/// for. The spread of hours is drawn towards a coefficient of variation of 0.35 as if four outings more had
/// shown it. Grounds and paces are those of the noted outings, by their hours; races that nobody has seen are
/// ridden on the ground of practice at race pace. `events` holds the past ones too; those called off or
/// entered by other machines only are left out. `atoms` in order of `to`.
Ahead aheadOf(MachineId machine, std::span<const usage::Atom> atoms, std::span<const Event> events,
              calendar::Date today);

/// Mean use of one counter from tomorrow up to and including `day`, hours as `weights` have it. Months and
/// Days count days.
double meanUse(const Ahead& ahead, upkeep::Counter counter, calendar::Date day,
               std::span<const usage::HourWeight> weights = {});

/// What if? The same outlook, changed; nothing is stored. Ridden `times` as often in weeks without an event;
/// all on one ground, at the pace of old (mud and water make mud days, the rest none); one event more, which
/// takes the place of its week's habit, so that a race less ridden than the week it falls in can put a job
/// off.
Ahead ridingMoreOften(Ahead ahead, double times);
Ahead ridingOn(Ahead ahead, usage::Ground ground);
Ahead withEvent(Ahead ahead, const EventAhead& event);

/// All of these together.
struct Supposing {
    double timesAsOften = 1;
    std::optional<usage::Ground> ground{};
    std::optional<EventAhead> event{};
};
Ahead supposing(Ahead ahead, const Supposing& what);

enum class StandingKind : std::uint8_t { InHand, BeforeEvent, MayBeOver, Overdue, NoRecord, NothingFitted };

/// How a task stands, with the look ahead.
struct Standing {
    StandingKind kind = StandingKind::InHand;
    /// The days up to which it has fallen due with a chance of 10, 50 and 90 %; nothing: not within two
    /// years.
    std::optional<calendar::Date> early{};
    std::optional<calendar::Date> likely{};
    std::optional<calendar::Date> late{};
    /// That it falls due up to the end of the event, or within 14 days without one. Nothing: no record, or a
    /// habit that nobody knows.
    std::optional<double> chance{};
    std::optional<EventAhead> event{};  ///< the event it falls due before (BeforeEvent), or the next one
    /// Of several limits the one that is expected to give `likely`, if the first of them counts.
    std::optional<std::size_t> limit{};
    double reach = 0;  ///< 0 = just inside the next event's reach, 1 = at the limit: turns the mark
};

class Odds;

/// NothingFitted: its position is empty. Overdue: over, beyond any allowance, or triggered. MayBeOver: only
/// the high end of what is behind it is there. NoRecord: the countdown has none, or neither a likely nor a
/// high figure; but what is due before each race is BeforeEvent even so. BeforeEvent: over within its
/// allowance, or likely due (50 %) up to the end of the next event (without an event: within 14 days). Else
/// InHand. What falls due when, see `duePointOf` in core/outlook/odds.h.
Standing standingOf(const upkeep::TaskVersion& task, const upkeep::Countdown& countdown, const Odds& odds);

/// The last day of the next event, or 14 days from now without one: up to where "before the flag" reaches.
calendar::Date flagOf(const Ahead& ahead);

}  // namespace wm::outlook

namespace wm::base {
template <>
struct Names<outlook::Trust> {
    static constexpr std::array<std::string_view, 4> names{"steady", "changed", "resting", "unknown"};
};
template <>
struct Names<outlook::StandingKind> {
    static constexpr std::array<std::string_view, 6> names{"in hand", "before event", "may be over",
                                                           "overdue", "no record",    "nothing fitted"};
};
}  // namespace wm::base
