// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/outlook/days.h"

#include <algorithm>

namespace wm::outlook {

using calendar::Date;

std::int32_t weekOf(Date date) {
    const std::int32_t sinceMonday = date.daysSinceEpoch() + 3;  // 1970-01-01 was a Thursday
    return sinceMonday >= 0 ? sinceMonday / 7 : (sinceMonday - 6) / 7;
}

Date mondayOf(std::int32_t week) {
    return Date{week * 7 - 3};
}

std::vector<DaysAhead> daysAhead(const Ahead& ahead, std::int32_t most) {
    most = std::max(most, 0);
    std::vector<DaysAhead> days(static_cast<std::size_t>(most) + 1, DaysAhead{1, 0, 0});
    days[0].habit = 0;
    const auto forEach = [&](Date first, Date last, auto&& act) {
        const std::int32_t end = std::min(last - ahead.today, most);
        for (std::int32_t day = std::max(first - ahead.today, 1); day <= end; ++day)
            act(days[static_cast<std::size_t>(day)]);
    };
    for (const EventAhead& event : ahead.events) {
        forEach(mondayOf(weekOf(event.first)), mondayOf(weekOf(event.last)).plusDays(6),
                [](DaysAhead& day) { day.habit = 0; });
        forEach(event.first, event.last,
                [&](DaysAhead& day) { ++(event.kind == EventKind::Race ? day.races : day.practice); });
    }
    for (std::size_t day = 1; day < days.size(); ++day) {
        days[day].habit += days[day - 1].habit;
        days[day].practice += days[day - 1].practice;
        days[day].races += days[day - 1].races;
    }
    return days;
}

}  // namespace wm::outlook
