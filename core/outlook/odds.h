// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/outlook/ahead.h"
#include "core/outlook/days.h"

namespace wm::outlook {

/// So much of a counter still to be used. PressureWash stands beside the counters, as no limit counts it.
struct Need {
    upkeep::Counter counter = upkeep::Counter::Hours;
    std::int64_t left = 0;
    bool pressure = false;  ///< of washes: only those with a pressure washer
};

/// What it counts, of what is counted in pieces.
std::optional<usage::Piece> pieceOf(const Need& need);

/// What has to come for a task to fall due, of what can be foreseen: `needs` and `day`, the first or the last
/// of them, or before that whichever comes first of `atOnce` and `onDay`.
struct DuePoint {
    upkeep::Combine combine = upkeep::Combine::First;
    std::vector<Need> needs{};                 ///< one a counter
    std::vector<usage::HourWeight> weights{};  ///< of the hours that are needed
    std::optional<calendar::Date> day{};       ///< of the limits in days and months
    std::vector<Need> atOnce{};                ///< a wash, a mud day
    std::optional<calendar::Date> onDay{};     ///< the next race
    bool isNow = false;                        ///< nothing is left already
};

/// Of limits on one counter the first or the last counts. A limit that is reached is no need any more; with
/// Combine::First it makes the point now. A wash and a mud day are foreseen, a race by its entered day. A
/// crash, another job and an n-th completion of another task are not: they make no day and no chance.
DuePoint duePointOf(const upkeep::TaskVersion& task, const upkeep::Countdown& countdown, const Ahead& ahead);

/// The days on which something has come with a chance of 10, 50 and 90 %; nothing beyond two years.
struct Window {
    std::optional<calendar::Date> early{};
    std::optional<calendar::Date> likely{};
    std::optional<calendar::Date> late{};
};

/// What an outlook says about single tasks: given how many outings of habit there are the counters are
/// independent of each other, so a chance is a sum over that number. Exact but for hours and metres (see
/// `chanceOfLess`; weighted hours, of a few outings on grounds that weigh very differently, are up to 2.5
/// points off), for washes that go with mud, which are taken as independent, and for two outings in one day's
/// mud, which count as two days. Keeps what it has worked out: not for sharing between threads.
class Odds {
  public:
    explicit Odds(Ahead ahead);

    [[nodiscard]] const Ahead& ahead() const { return ahead_; }

    /// That the point has come by the evening of a day.
    [[nodiscard]] double chanceBy(const DuePoint& point, calendar::Date day) const;
    [[nodiscard]] Window windowOf(const DuePoint& point) const;

  private:
    class Curve;
    class Task;
    [[nodiscard]] const Counts& counts(int habitDays) const;

    Ahead ahead_;
    std::vector<DaysAhead> days_;
    int mostOutings_ = 0;
    mutable std::vector<std::optional<Counts>> counts_;  // by days of habit
};

}  // namespace wm::outlook
