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
    if (countdown.triggered || (countdown.over && !countdown.withinAllowance)) {
        standing.kind = StandingKind::Overdue;
        standing.early = standing.likely = standing.late = ahead.today;
        standing.chance = standing.reach = 1;
        return standing;
    }
    if (countdown.noRecord) {
        standing.kind = StandingKind::NoRecord;
        return standing;
    }
    const Date flag = flagOf(ahead);
    const DuePoint point = duePointOf(task, countdown, ahead);
    const Window window = odds.windowOf(point);
    standing.early = window.early;
    standing.likely = window.likely;
    standing.late = window.late;
    if (ahead.trust != Trust::Unknown)
        standing.chance = odds.chanceBy(point, flag);
    if (window.likely && *window.likely <= flag) {
        standing.kind = StandingKind::BeforeEvent;
        standing.reach = reachOf(task, countdown, ahead, flag);
    }
    return standing;
}

}  // namespace wm::outlook
