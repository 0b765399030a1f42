// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/narrowing.h"

#include <algorithm>

namespace wm::book {

namespace {

bool isOpen(const upkeep::LimitState& state) {
    return state.reached == upkeep::Reached::MayBe || state.reached == upkeep::Reached::NobodyKnows;
}

// The day of a job that somebody wrote down, not one that the hours led to.
std::optional<calendar::Date> dayOf(const DueLine& line) {
    if (line.last == nullptr || upkeep::wasNeverDone(*line.last))
        return std::nullopt;
    const auto isLoose = [](const upkeep::Stated& stated) {
        return stated.counter == upkeep::Counter::Days || stated.counter == upkeep::Counter::Hours;
    };
    return std::any_of(line.last->stated.begin(), line.last->stated.end(), isLoose)
               ? std::nullopt
               : std::optional(line.last->date);
}

}  // namespace

std::optional<Narrowing> narrowingOf(const DueLine& line) {
    const auto& down = line.countdown;
    if (!down.governing || !isOpen(down.limits[*down.governing]))
        return std::nullopt;
    const upkeep::LimitState& state = down.limits[*down.governing];
    Narrowing narrowing{.counter = state.limit.counter, .since = dayOf(line)};
    switch (upkeep::traitsOf(narrowing.counter).kind) {
        case upkeep::CounterKind::Hours:
            narrowing.by = narrowing.since ? NarrowedBy::MeterThen
                           : state.stated  ? NarrowedBy::HoursSince
                                           : NarrowedBy::Past;
            break;
        case upkeep::CounterKind::Metres:
        case upkeep::CounterKind::Pieces:
            narrowing.by = NarrowedBy::CountSince;
            break;
        case upkeep::CounterKind::Days:
        case upkeep::CounterKind::Months:
            narrowing.by = NarrowedBy::Day;
            break;
    }
    return narrowing;
}

}  // namespace wm::book
