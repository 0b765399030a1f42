// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/upkeep/unknown.h"

#include <algorithm>
#include <numeric>
#include <tuple>

#include "core/upkeep/limits.h"

namespace wm::upkeep {

namespace {

// A month where only the length of many of them matters.
constexpr double kDaysOfAMonth = 365.25 / 12;

int placeOfClass(Consequence consequence) {
    switch (consequence) {
        case Consequence::SafetyHidden:
            return 0;
        case Consequence::SafetyEvident:
            return 1;
        case Consequence::HiddenWear:
            return 2;
        case Consequence::EndsRace:
            return 3;
        case Consequence::CostsMoney:
            break;
    }
    return 4;
}

double mostBehind(const Unknown& unknown, Counter counter, calendar::Date on) {
    const int days = std::max(on - unknown.oldestSince, 0);
    switch (traitsOf(counter).kind) {
        case CounterKind::Hours:
        case CounterKind::Metres:
        case CounterKind::Pieces: {
            const CountBracket behind = bracketOf(unknown.life, counter);
            return static_cast<double>(reckonedFrom(behind, From::High));
        }
        case CounterKind::Days:
            return days;
        case CounterKind::Months:
            break;
    }
    return days / kDaysOfAMonth;
}

}  // namespace

double intervalsBehind(const Unknown& unknown, calendar::Date on) {
    const bool first = unknown.task->combine == Combine::First;
    std::optional<double> behind;
    for (const Limit& limit : unknown.task->limits) {
        if (limit.every <= 0)
            continue;
        const double share = mostBehind(unknown, limit.counter, on) / static_cast<double>(limit.every);
        behind = !behind ? share : first ? std::max(*behind, share) : std::min(*behind, share);
    }
    return behind.value_or(0);
}

std::vector<std::size_t> rankUnknown(std::span<const Unknown> unknowns, calendar::Date on) {
    using Place = std::tuple<int, double, std::string_view, TaskId>;
    std::vector<Place> places;
    for (const Unknown& unknown : unknowns)
        places.emplace_back(placeOfClass(unknown.task->consequence), -intervalsBehind(unknown, on),
                            unknown.task->name, unknown.task->task);
    std::vector<std::size_t> order(unknowns.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return places[a] < places[b]; });
    return order;
}

bool isALook(const TaskVersion& task) {
    return !task.renews && std::all_of(task.kit.begin(), task.kit.end(),
                                       [](const KitLine& line) { return line.onlyIfNeeded; });
}

bool countsOnlyHours(const TaskVersion& task) {
    return std::all_of(task.limits.begin(), task.limits.end(),
                       [](const Limit& limit) { return limit.counter == Counter::Hours; });
}

}  // namespace wm::upkeep
