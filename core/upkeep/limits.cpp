// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/upkeep/limits.h"

#include <algorithm>

#include "core/upkeep/counters.h"

namespace wm::upkeep {

using calendar::Date;

namespace {

// Beyond a hundred years nothing falls due; keeps dates inside the calendar.
constexpr std::int64_t kMostMonths = 1'200;
constexpr std::int64_t kMostDays = 36'525;

// An exposure or an atom: both have hours and a distance, and pieces each in its own place.
template <class Use>
CountBracket countIn(const Use& use, Counter counter, std::int64_t Use::*pieces, bool open) {
    switch (traitsOf(counter).kind) {
        case CounterKind::Hours:
            return bracketOf(use.hours);
        case CounterKind::Metres:
            return bracketOf(use.distance);
        case CounterKind::Pieces:
            if (open)
                return {use.*pieces, std::nullopt, std::nullopt};
            return {use.*pieces, use.*pieces, use.*pieces};
        case CounterKind::Days:
        case CounterKind::Months:
            break;
    }
    return {};
}

Date dayAfter(Date from, Counter counter, std::int64_t amount) {
    return counter == Counter::Days ? from.plusDays(static_cast<std::int32_t>(std::min(amount, kMostDays)))
                                    : from.plusMonths(static_cast<int>(std::min(amount, kMostMonths)));
}

// Done in the last tenth of the way to a mark: done for that mark.
bool isForMark(std::int64_t toMark, std::int64_t way) {
    return 10 * toMark <= way;
}

// From a completion at `position` to the next mark: 15 h marks, done at 16.2 h: 13.8 h to 30; done at 14.2 h,
// for the mark at 15: 15.8 h to 30.
std::int64_t toNextMark(std::int64_t position, std::int64_t every) {
    const std::int64_t toMark = every - position % every;
    return isForMark(toMark, every) ? toMark + every : toMark;
}

Date nextMarkDay(Date since, Date done, Counter counter, std::int64_t every) {
    const auto markDay = [&](std::int64_t n) {
        return counter == Counter::Days ? since.plusDays(static_cast<std::int32_t>(n * every))
                                        : since.plusMonths(static_cast<int>(n * every));
    };
    const std::int64_t passed = counter == Counter::Days
                                    ? done - since
                                    : (done.year() - since.year()) * 12 + done.month() - since.month();
    std::int64_t mark = std::max<std::int64_t>(passed / every, 1);
    while (markDay(mark) <= done)
        ++mark;
    return isForMark(markDay(mark) - done, markDay(mark) - markDay(mark - 1)) ? markDay(mark + 1)
                                                                              : markDay(mark);
}

void reckonDays(LimitState& state, const Count& count) {
    const Counter counter = state.limit.counter;
    const std::int64_t every =
        std::min(state.limit.every, counter == Counter::Days ? kMostDays : kMostMonths);
    const bool marks = count.countFrom == CountFrom::FixedMarks && count.after;
    state.behind = behindOf(count, counter);
    const auto doneOn = [&](std::int64_t age) {
        return count.on.plusDays(-static_cast<std::int32_t>(std::min(age, kMostDays)));
    };
    const auto dueFor = [&](std::int64_t age) {
        return marks ? nextMarkDay(count.since, doneOn(age), counter, every)
                     : dayAfter(doneOn(age), counter, state.isFirst ? *state.limit.first : every);
    };
    const std::int64_t allowance = state.limit.hard ? 0 : state.limit.allowance;
    state.reached = upkeep::reached(state.behind, [&](std::int64_t age) { return dueFor(age) <= count.on; });
    state.beyond = upkeep::reached(state.behind, [&](std::int64_t age) {
        return allowance == 0 ? dueFor(age) <= count.on
                              : dayAfter(dueFor(age), counter, allowance) < count.on;
    });
    const std::int64_t age = reckonedFrom(state.behind, count.side);
    const Date due = dueFor(age);
    state.dueOn = due;
    state.amount = due - doneOn(age);
    state.left = due - count.on;
    state.leftWithAllowance = dayAfter(due, counter, state.limit.allowance) - count.on;
}

void reckonUse(LimitState& state, const Count& count) {
    const Limit& limit = state.limit;
    const bool marks = count.countFrom == CountFrom::FixedMarks && count.after;
    state.behind = behindOf(count, limit.counter);
    if (count.raw && limit.counter == Counter::Hours) {
        state.raw = bracketOf(*count.raw);
        if (!count.hoursLikely)
            state.raw->best.reset();
    }
    if (marks)
        state.stoodAt = *bracketOf(count.before, limit.counter, false).best;
    state.amount = marks           ? toNextMark(*state.stoodAt, limit.every)
                   : state.isFirst ? *limit.first
                                   : limit.every;
    const std::int64_t allowance = limit.hard ? 0 : limit.allowance;
    state.reached =
        upkeep::reached(state.behind, [&](std::int64_t behind) { return behind >= state.amount; });
    state.beyond = upkeep::reached(state.behind, [&](std::int64_t behind) {
        return allowance == 0 ? behind >= state.amount : behind > state.amount + allowance;
    });
    state.unbounded = count.side == From::High && !state.behind.high;
    state.left = state.amount - reckonedFrom(state.behind, count.side);
    if (state.unbounded)
        state.left = std::min<std::int64_t>(state.left, 0);
    state.leftWithAllowance = state.left + limit.allowance;
}

}  // namespace

CountBracket bracketOf(const usage::Exposure& exposure, Counter counter, bool countsOpen) {
    const auto piece = traitsOf(counter).piece;
    return countIn(exposure, counter, piece ? traitsOf(*piece).behind : nullptr, countsOpen);
}

CountBracket bracketOf(const usage::Atom& atom, Counter counter) {
    const auto piece = traitsOf(counter).piece;
    return countIn(atom, counter, piece ? traitsOf(*piece).inAtom : nullptr, false);
}

const Count::Told* Count::toldOf(Counter counter) const {
    for (const Told& each : told)
        if (each.counter == counter)
            return &each;
    return nullptr;
}

CountBracket behindOf(const Count& count, Counter counter) {
    const auto* told = count.toldOf(counter);
    if (told != nullptr && counter != Counter::Hours)
        return told->behind;
    if (isCalendar(counter)) {
        const std::int64_t age = count.on - count.from;
        return {age, age, age};
    }
    CountBracket behind = bracketOf(count.behind, counter, count.countsOpen);
    if (counter == Counter::Hours && !count.hoursLikely)
        behind.best.reset();
    if (counter == Counter::Metres && count.countsOpen)
        behind.best = behind.high = std::nullopt;
    return behind;
}

usage::HoursBracket restOfPast(const usage::HoursBracket& past, const Record& baseline) {
    using units::Hours;
    const Hours best = *baseline.statedBest;
    const auto rest = [](Hours total, Hours stated) { return std::max(total - stated, Hours{0}); };
    return {rest(past.low, baseline.statedHigh.value_or(best)), rest(past.best, best),
            past.high ? std::optional(rest(*past.high, baseline.statedLow.value_or(best))) : std::nullopt};
}

LimitState limitState(const Limit& limit, const Count& count) {
    LimitState state{.limit = limit, .isFirst = !count.after && limit.first.has_value()};
    if (const auto* told = count.toldOf(limit.counter))
        state.stated = told->since;
    else
        state.isOpen = limit.counter == Counter::Hours ? !count.hoursLikely
                                                       : !isCalendar(limit.counter) && count.countsOpen;
    if (isCalendar(limit.counter))
        reckonDays(state, count);
    else
        reckonUse(state, count);
    if (limit.hard)
        state.leftWithAllowance = state.left;
    state.used = state.amount > 0
                     ? static_cast<double>(state.amount - state.left) / static_cast<double>(state.amount)
                     : 1;
    return state;
}

}  // namespace wm::upkeep
