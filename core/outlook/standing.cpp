// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/outlook/ahead.h"

namespace wm::outlook {

using calendar::Date;
using upkeep::Combine;
using upkeep::LimitState;

namespace {

constexpr std::int32_t kNear = 14;  // days that stand in for an event where none is entered

// What of a limit is left, and what the way to the horizon will use of it.
struct Outlook {
    std::optional<Date> day;  // when it is reached; nothing: far off
    double reach = 0;         // 0 = just at the horizon, 1 = now; negative beyond the horizon
};

Outlook lookAt(const LimitState& limit, const Ahead& ahead, Date horizon) {
    if (limit.left <= 0)
        return {ahead.today, 1};
    const double use = meanUse(ahead, limit.limit.counter, horizon);
    const double left = static_cast<double>(limit.left);
    Outlook outlook{limit.dueOn ? limit.dueOn : dayReached(ahead, limit.limit.counter, limit.left), -1};
    if (outlook.day && *outlook.day <= horizon)
        outlook.reach = use > left ? 1 - left / use : 0;
    return outlook;
}

bool isSooner(const Outlook& a, const Outlook& b) {
    if (a.day != b.day)
        return a.day && (!b.day || *a.day < *b.day);
    return a.reach > b.reach;
}

// Of several limits the one that decides.
Outlook lookAtAll(const std::vector<LimitState>& limits, Combine combine, const Ahead& ahead, Date horizon) {
    std::vector<Outlook> outlooks;
    for (const LimitState& limit : limits)
        outlooks.push_back(lookAt(limit, ahead, horizon));
    if (outlooks.empty())
        return {std::nullopt, -1};
    return combine == Combine::First ? *std::min_element(outlooks.begin(), outlooks.end(), isSooner)
                                     : *std::max_element(outlooks.begin(), outlooks.end(), isSooner);
}

}  // namespace

Standing standingOf(const upkeep::TaskVersion& task, const upkeep::Countdown& countdown, const Ahead& ahead) {
    Standing standing;
    const auto due = [&](StandingKind kind, std::optional<Date> day, double reach) {
        standing.kind = kind;
        standing.early = standing.likely = standing.late = day;
        standing.reach = reach;
    };
    if (!ahead.events.empty())
        standing.event = ahead.events.front();
    const Date horizon = standing.event ? standing.event->last : ahead.today.plusDays(kNear);

    if (countdown.triggered || (countdown.over && !countdown.withinAllowance)) {
        due(StandingKind::Overdue, ahead.today, 1);
        return standing;
    }
    if (countdown.noRecord) {
        due(StandingKind::NoRecord, std::nullopt, 0);
        return standing;
    }
    Outlook outlook = lookAtAll(countdown.limits, task.combine, ahead, horizon);
    const bool racesNext = standing.event && standing.event->kind == EventKind::Race;
    if (countdown.beforeNextRace && racesNext) {
        const Outlook race{standing.event->first, 0};
        if (isSooner(race, outlook))
            outlook = race;
    }
    const bool near = outlook.day && *outlook.day <= horizon;
    due(near ? StandingKind::BeforeEvent : StandingKind::InHand, outlook.day, near ? outlook.reach : 0);
    return standing;
}

}  // namespace wm::outlook
