// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/outlook/ahead.h"

#include <algorithm>
#include <tuple>
#include <utility>

#include "core/outlook/days.h"
#include "core/upkeep/counters.h"

namespace wm::outlook {

using calendar::Date;
using upkeep::Counter;
using upkeep::CounterKind;

namespace {

constexpr std::int32_t kNear = 14;  // days that stand in for an event where none is entered

double meanOf(const PieceLaw& law, usage::Comes comes, double outings, double races) {
    switch (comes) {
        case usage::Comes::EachOuting:
            return outings;
        case usage::Comes::AtRaces:
            return races * law.mean;
        case usage::Comes::AnyOuting:
        case usage::Comes::AsMud:
        case usage::Comes::AsWash:
            break;
    }
    return outings * law.mean;
}

double meanOf(const Ahead& ahead, Counter counter, const DaysAhead& days,
              std::span<const usage::HourWeight> weights = {}) {
    const double practice = days.practice + days.habit * ahead.timesAsOften * ahead.habitOutingsPerWeek / 7;
    const double outings = practice + days.races;
    const upkeep::CounterTraits& traits = upkeep::traitsOf(counter);
    switch (traits.kind) {
        case CounterKind::Hours:
            return 100 * (practice * ahead.practiceHours.mean * meanWeight(ahead.practiceGround, weights) +
                          days.races * ahead.raceHours.mean * meanWeight(ahead.raceGround, weights));
        case CounterKind::Metres:
            return outings * ahead.metres.mean;
        case CounterKind::Pieces:
            return meanOf(ahead.of(*traits.piece), usage::traitsOf(*traits.piece).comes, outings, days.races);
        case CounterKind::Days:
        case CounterKind::Months:
            break;
    }
    return 0;
}

}  // namespace

double meanUse(const Ahead& ahead, Counter counter, Date day, std::span<const usage::HourWeight> weights) {
    const std::int32_t days = std::max(day - ahead.today, 0);
    return isCalendar(counter) ? days : meanOf(ahead, counter, daysAhead(ahead, days).back(), weights);
}

Date flagOf(const Ahead& ahead) {
    return ahead.events.empty() ? ahead.today.plusDays(kNear) : ahead.events.front().last;
}

Ahead ridingMoreOften(Ahead ahead, double times) {
    ahead.timesAsOften *= times;
    return ahead;
}

Ahead ridingOn(Ahead ahead, usage::Ground ground) {
    ahead.of(usage::Piece::MudDays) = {usage::isMuddy(ground) ? 1.0 : 0.0, 0};
    for (GroundMix* mix : {&ahead.practiceGround, &ahead.raceGround}) {
        GroundMix all{{}, mix->seen};
        for (const GroundMix::Part& part : mix->parts)
            all.add(ground, part.pace, part.share);
        if (all.parts.empty())
            all.add(ground, usage::Pace::Unstated, 1);
        *mix = std::move(all);
    }
    return ahead;
}

Ahead withEvent(Ahead ahead, const EventAhead& event) {
    const auto order = [](const EventAhead& a) { return std::tie(a.first, a.last, a.id); };
    ahead.events.insert(
        std::upper_bound(ahead.events.begin(), ahead.events.end(), event,
                         [&](const EventAhead& a, const EventAhead& b) { return order(a) < order(b); }),
        event);
    return ahead;
}

Ahead supposing(Ahead ahead, const Supposing& what) {
    ahead = ridingMoreOften(std::move(ahead), what.timesAsOften);
    if (what.ground)
        ahead = ridingOn(std::move(ahead), *what.ground);
    return what.event ? withEvent(std::move(ahead), *what.event) : ahead;
}

}  // namespace wm::outlook
