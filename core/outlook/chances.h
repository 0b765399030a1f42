// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>

#include "core/outlook/draws.h"
#include "core/outlook/odds.h"

namespace wm::outlook {

/// A task that is in hand, with what it waits for.
struct Watched {
    TaskId task{};
    upkeep::Consequence consequence = upkeep::Consequence::CostsMoney;
    DuePoint point{};
};

/// How one machine gets to the flag: from tomorrow up to the end of its next event, or 14 days without one.
/// `clear` is the chance that of the tasks still in hand none falls due on the way. What is due already, put
/// off or without a record is no part of it (with any of it due the chance would be 0, and say nothing of the
/// rest), nor is the round, which is due each time anyhow: they are counted beside. One machine's tasks share
/// its outings, so the chance is reckoned on common draws of them, never by multiplying tasks.
struct Chances {
    std::optional<EventAhead> event{};
    calendar::Date until{};
    Trust trust = Trust::Steady;
    std::optional<double> clear{};  ///< nothing if the habit is unknown
    std::optional<TaskId> first{};  ///< what falls due first in most of the draws in which anything does
    double firstShare = 0;          ///< in so many of these
    std::int64_t inHand = 0;        ///< tasks that `clear` is about
    std::int64_t dueNow = 0;
    std::int64_t beforeEvent = 0;  ///< of these `inHand` the ones that likely fall due before the event
    std::optional<double> clearOfRest{};  ///< that none but them falls due: with all that is listed done
    std::optional<TaskId> firstOfRest{};  ///< what of them goes first
    double firstShareOfRest = 0;
    std::int64_t picked = 0;      ///< tasks that are picked for the next work window
    std::int64_t leftOver = 0;    ///< of what is due now or may be over: not picked
    std::int64_t leftBefore = 0;  ///< of what falls due before the event: not picked
    std::optional<double>
        clearOfUnpicked{};  ///< that nothing falls due that is not picked; none while leftOver
    std::int64_t mayBeOver = 0;
    std::int64_t noRecord = 0;
    std::int64_t putOff = 0;
    std::int64_t round = 0;
};

/// What is done with every outing or two, or before each race: due each time, a round of its own.
bool isOfTheRound(const upkeep::TaskVersion& task);

/// The joint part of it (clear, first, firstShare, inHand) for the tasks that are watched, up to `until`.
/// Of two that fall due at once the one of graver consequence is first. Standard error of `clear`: see Draws;
/// it is kept within what the tasks' own chances allow.
Chances chancesOf(std::span<const Watched> tasks, const Odds& odds, calendar::Date until,
                  const Draws& draws = {});

}  // namespace wm::outlook
