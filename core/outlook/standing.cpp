// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/outlook/odds.h"

namespace wm::outlook {

using calendar::Date;
using upkeep::Combine;

namespace {

// 0 = just used up at the flag in the mean, 1 = now.
double reachOf(const upkeep::LimitState& limit, const Ahead& ahead, Date flag,
               std::span<const usage::HourWeight> weights) {
    const auto left = static_cast<double>(limit.left);
    const double use = meanUse(ahead, limit.limit.counter, flag, weights);
    return left <= 0 ? 1 : use > left ? 1 - left / use : 0;
}

double reachOf(const upkeep::TaskVersion& task, const upkeep::Countdown& countdown, const Ahead& ahead,
               Date flag) {
    std::optional<double> reach;
    for (const upkeep::LimitState& limit : countdown.limits) {
        const double own = reachOf(limit, ahead, flag, task.weights);
        reach = !reach ? own : task.combine == Combine::First ? std::max(*reach, own) : std::min(*reach, own);
    }
    return reach.value_or(0);
}

// The limit that is the furthest used up, in the mean, on the day on which the task is likely due.
std::optional<std::size_t> limitThatGives(Date likely, const upkeep::TaskVersion& task,
                                          const upkeep::Countdown& countdown, const Ahead& ahead) {
    if (task.combine != Combine::First || countdown.limits.size() < 2)
        return std::nullopt;
    std::optional<std::size_t> most;
    double mostUsed = 0;
    for (std::size_t at = 0; at < countdown.limits.size(); ++at) {
        const upkeep::LimitState& limit = countdown.limits[at];
        const double left = std::max(static_cast<double>(limit.left), 0.5);  // half a piece: used up
        const double used = meanUse(ahead, limit.limit.counter, likely, task.weights) / left;
        if (!most || used > mostUsed) {
            most = at;
            mostUsed = used;
        }
    }
    return most;
}

// Only the high end is there, of the limit or of what its allowance leaves.
bool mayBeOver(const upkeep::Countdown& countdown) {
    using upkeep::Reached;
    return countdown.reached == Reached::MayBe || (countdown.over && countdown.beyond == Reached::MayBe);
}

bool isKnown(const upkeep::Countdown& countdown) {
    return !countdown.noRecord && countdown.reached != upkeep::Reached::NobodyKnows;
}

bool isRaceBy(const Ahead& ahead, Date flag) {
    return std::any_of(ahead.events.begin(), ahead.events.end(), [&](const EventAhead& event) {
        return event.kind == EventKind::Race && event.first <= flag;
    });
}

}  // namespace

Standing standingOf(const upkeep::TaskVersion& task, const upkeep::Countdown& countdown, const Odds& odds) {
    const Ahead& ahead = odds.ahead();
    Standing standing;
    if (!ahead.events.empty())
        standing.event = ahead.events.front();
    if (countdown.nothingFitted) {
        standing.kind = StandingKind::NothingFitted;
        return standing;
    }
    const bool maybe = mayBeOver(countdown);
    if (countdown.triggered || countdown.value || (countdown.over && !countdown.withinAllowance)) {
        standing.kind = StandingKind::Overdue;
        standing.early = standing.likely = standing.late = ahead.today;
        standing.chance = standing.reach = 1;
        return standing;
    }
    const Date flag = flagOf(ahead);
    if (!isKnown(countdown) && !(countdown.beforeNextRace && isRaceBy(ahead, flag))) {
        standing.kind = StandingKind::NoRecord;
        return standing;
    }
    const DuePoint point = duePointOf(task, countdown, ahead);
    const Window window = odds.windowOf(point);
    standing.early = window.early;
    standing.likely = window.likely;
    standing.late = window.late;
    if (maybe) {
        standing.kind = StandingKind::MayBeOver;
        standing.reach = 1;
        return standing;
    }
    if (standing.likely && !countdown.over && !countdown.beforeNextRace)
        standing.limit = limitThatGives(*standing.likely, task, countdown, ahead);
    if (ahead.trust != Trust::Unknown)
        standing.chance = odds.chanceBy(point, flag);
    // Of a habit that nobody knows only what is all but certain is said.
    const auto& by = ahead.trust == Trust::Unknown ? window.late : window.likely;
    if (by && *by <= flag) {
        standing.kind = StandingKind::BeforeEvent;
        standing.reach = reachOf(task, countdown, ahead, flag);
    }
    return standing;
}

}  // namespace wm::outlook
