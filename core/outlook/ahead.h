// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

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

/// What lies ahead of one machine: its entered events in order, and its habit. Every page that looks ahead
/// asks this one value. Means only for now; the chances come with the full outlook and stand behind the same
/// functions.
struct Ahead {
    calendar::Date today{};
    std::vector<EventAhead> events{};
    double habitOutingsPerWeek = 0;  ///< in weeks without an event
    double hoursPerOuting = 0;       ///< of practice; races below
    double hoursPerRace = 0;
    double metresPerOuting = 0;
    double startsPerRace = 0;
    double washesPerOuting = 0;
    double mudShare = 0;
    double crashesPerOuting = 0;
    std::int64_t weeksSeen = 0;  ///< how much history the habit rests on
};

/// The habit is learned from the whole weeks (Monday to Sunday) of the last year in which this machine was
/// entered for no event, the current week left out. A pause, eight or more weeks in a row without riding or
/// event (a winter, an injury), is no part of the habit, at the end no less than in the middle; of the weeks
/// that remain the newest 26 count. Unlogged hours count as outings of mean length. Means an outing come from
/// the whole last year; a race is an outing with starts, or one on a race day that the machine was entered
/// for. `events` holds the past ones too; those called off or entered by other machines only are left out.
/// `atoms` in order of `to`.
Ahead aheadOf(MachineId machine, std::span<const usage::Atom> atoms, std::span<const Event> events,
              calendar::Date today);

/// Mean use of one counter from tomorrow up to and including `day`. Months and Days count days.
double meanUse(const Ahead& ahead, upkeep::Counter counter, calendar::Date day);

/// The day on which `left` more of a counter has been used in the mean; nothing if that is more than two
/// years away.
std::optional<calendar::Date> dayReached(const Ahead& ahead, upkeep::Counter counter, std::int64_t left);

enum class StandingKind : std::uint8_t { InHand, BeforeEvent, Overdue, NoRecord };

/// How a task stands, with the look ahead.
struct Standing {
    StandingKind kind = StandingKind::InHand;
    std::optional<calendar::Date> early{};   ///< 10 %; same as likely until the outlook has chances
    std::optional<calendar::Date> likely{};  ///< the mean, later the 50 % point
    std::optional<calendar::Date> late{};    ///< 90 %
    std::optional<EventAhead> event{};       ///< the event it falls due before (BeforeEvent), or the next one
    double reach = 0;  ///< 0 = just inside the next event's reach, 1 = at the limit: turns the mark
};

/// Overdue: over, beyond any allowance, or triggered. NoRecord as the countdown says. BeforeEvent: over
/// within its allowance, or falls due up to the end of the next event (without an event: within 14 days of
/// habit), or waits for a race and the next event is one. Else InHand. With Combine::Last the last limit
/// decides.
Standing standingOf(const upkeep::TaskVersion& task, const upkeep::Countdown& countdown, const Ahead& ahead);

}  // namespace wm::outlook

namespace wm::base {
template <>
struct Names<outlook::StandingKind> {
    static constexpr std::array<std::string_view, 4> names{"in hand", "before event", "overdue", "no record"};
};
}  // namespace wm::base
