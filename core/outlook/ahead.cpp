// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/outlook/ahead.h"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace wm::outlook {

using calendar::Date;
using calendar::Moment;
using upkeep::Counter;
using usage::Atom;
using usage::AtomKind;

namespace {

constexpr std::int32_t kYear = 52;       // weeks of history that count
constexpr std::size_t kHabitWeeks = 26;  // of those without an event
constexpr std::size_t kPause = 8;        // idle weeks in a row that are no habit
constexpr double kHoursOfUnknown = 2;    // an outing's length where only the meter was ever read
constexpr std::int32_t kFarthest = 730;  // days

// The number of a week from Monday to Sunday; 1970-01-01 was a Thursday.
std::int32_t weekOf(Date date) {
    const std::int32_t sinceMonday = date.daysSinceEpoch() + 3;
    return sinceMonday >= 0 ? sinceMonday / 7 : (sinceMonday - 6) / 7;
}

Date mondayOf(std::int32_t week) {
    return Date{week * 7 - 3};
}

Moment sundayEvening(std::int32_t week) {
    return {mondayOf(week).plusDays(6), calendar::DayPart::AfterRiding};
}

double hoursOf(const Atom& atom) {
    return static_cast<double>(atom.hours.best.count()) / 100;
}

std::vector<Event> enteredBy(MachineId machine, std::span<const Event> events) {
    std::vector<Event> entered;
    for (const Event& event : events)
        if (!event.calledOff && std::any_of(event.entries.begin(), event.entries.end(),
                                            [&](const Entry& entry) { return entry.machine == machine; }))
            entered.push_back(event);
    std::sort(entered.begin(), entered.end(), [](const Event& a, const Event& b) {
        return std::tie(a.first, a.last, a.id) < std::tie(b.first, b.last, b.id);
    });
    return entered;
}

bool isRaceDay(std::span<const Event> entered, Date day) {
    return std::any_of(entered.begin(), entered.end(), [&](const Event& event) {
        return event.kind == EventKind::Race && event.first <= day && day <= event.last;
    });
}

// What one kind of outing adds up to.
struct Sum {
    double outings = 0;
    double hours = 0;
    double starts = 0;
    void add(const Atom& atom) {
        ++outings;
        hours += hoursOf(atom);
        starts += static_cast<double>(atom.starts);
    }
};

double mean(double sum, double count, double otherwise = 0) {
    return count > 0 ? sum / count : otherwise;
}

// Means an outing, from the last year.
void learnOutings(Ahead& ahead, std::span<const Atom> lastYear, std::span<const Event> entered) {
    Sum practice;
    Sum races;
    double metres = 0;
    double washes = 0;
    double mud = 0;
    double crashes = 0;
    for (const Atom& atom : lastYear) {
        metres += static_cast<double>(atom.distance.best.count());
        washes += static_cast<double>(atom.washes);
        crashes += static_cast<double>(atom.crashes);
        mud += atom.mud ? 1 : 0;
        if (atom.kind == AtomKind::Outing)
            (atom.starts > 0 || isRaceDay(entered, atom.to.date) ? races : practice).add(atom);
    }
    const double outings = practice.outings + races.outings;
    ahead.hoursPerOuting = mean(practice.hours, practice.outings, mean(races.hours, races.outings));
    if (ahead.hoursPerOuting == 0)
        ahead.hoursPerOuting = kHoursOfUnknown;
    ahead.hoursPerRace = mean(races.hours, races.outings, ahead.hoursPerOuting);
    ahead.startsPerRace = mean(races.starts, races.outings);
    ahead.metresPerOuting = mean(metres, outings);
    ahead.washesPerOuting = mean(washes, outings);
    ahead.mudShare = mean(mud, outings);
    ahead.crashesPerOuting = mean(crashes, outings);
}

struct Week {
    double outings = 0;
    bool hasEvent = false;
    [[nodiscard]] bool isIdle() const { return outings == 0 && !hasEvent; }
};

// The whole weeks from the first riding (at most a year ago) up to last Sunday.
std::vector<Week> weeksOf(const Ahead& ahead, std::span<const Atom> atoms, std::span<const Event> entered) {
    const std::int32_t end = weekOf(ahead.today);
    std::int32_t first = end;
    for (const Atom& atom : atoms)
        if (atom.kind == AtomKind::Outing || atom.kind == AtomKind::Unlogged)
            first = std::min(first, weekOf(atom.from.date));
    first = std::max(first, end - kYear);
    std::vector<Week> weeks(static_cast<std::size_t>(end - first));
    const auto weekAt = [&](std::int32_t week) -> Week& {
        return weeks[static_cast<std::size_t>(week - first)];
    };
    for (const Atom& atom : atoms) {
        const std::int32_t last = std::min(weekOf(atom.to.date), end - 1);
        for (std::int32_t week = std::max(weekOf(atom.from.date), first); week <= last; ++week) {
            if (atom.kind == AtomKind::Outing)
                weekAt(week).outings += 1;
            else if (atom.kind == AtomKind::Unlogged)
                if (const auto part = usage::partOf(atom, sundayEvening(week - 1), sundayEvening(week)))
                    weekAt(week).outings += hoursOf(*part) / ahead.hoursPerOuting;
        }
    }
    for (const Event& event : entered)
        for (std::int32_t week = std::max(weekOf(event.first), first);
             week <= std::min(weekOf(event.last), end - 1); ++week)
            weekAt(week).hasEvent = true;
    return weeks;
}

// Leaves out weeks with an event and pauses, keeps the newest of the rest.
void learnHabit(Ahead& ahead, const std::vector<Week>& weeks) {
    std::vector<double> kept;
    for (std::size_t i = 0; i < weeks.size();) {
        std::size_t idle = i;
        while (idle < weeks.size() && weeks[idle].isIdle())
            ++idle;
        if (idle - i < kPause)
            kept.insert(kept.end(), idle - i, 0.0);
        if (idle < weeks.size() && !weeks[idle].hasEvent)
            kept.push_back(weeks[idle].outings);
        i = idle + 1;
    }
    const std::size_t count = std::min(kept.size(), kHabitWeeks);
    ahead.weeksSeen = static_cast<std::int64_t>(count);
    ahead.habitOutingsPerWeek =
        mean(std::accumulate(kept.end() - static_cast<std::ptrdiff_t>(count), kept.end(), 0.0),
             static_cast<double>(count));
}

// The days after today up to `day`, sorted by what is ridden on them.
struct DaysAhead {
    double habit = 0;
    double practice = 0;
    double races = 0;
};

DaysAhead daysAhead(const Ahead& ahead, Date day) {
    const auto between = [&](Date first, Date last) {
        return std::max(std::min(last, day) - std::max(first, ahead.today.plusDays(1)) + 1, 0);
    };
    DaysAhead days;
    days.habit = std::max(day - ahead.today, 0);
    std::optional<std::int32_t> done;  // the last week that was taken out of the habit
    for (const EventAhead& event : ahead.events) {
        (event.kind == EventKind::Race ? days.races : days.practice) += between(event.first, event.last);
        std::int32_t week = weekOf(event.first);
        for (week = done ? std::max(week, *done + 1) : week; week <= weekOf(event.last); ++week) {
            days.habit -= between(mondayOf(week), mondayOf(week).plusDays(6));
            done = week;
        }
    }
    return days;
}

bool isCalendar(Counter counter) {
    return counter == Counter::Days || counter == Counter::Months;
}

}  // namespace

Ahead aheadOf(MachineId machine, std::span<const Atom> atoms, std::span<const Event> events, Date today) {
    Ahead ahead;
    ahead.today = today;
    const std::vector<Event> entered = enteredBy(machine, events);
    for (const Event& event : entered)
        if (event.last >= today)
            ahead.events.push_back({event.id, event.name, event.kind, event.first, event.last});
    const auto upTo = [&](Moment when) {
        return std::partition_point(atoms.begin(), atoms.end(),
                                    [&](const Atom& atom) { return atom.to <= when; });
    };
    const auto end = upTo({today, calendar::DayPart::AfterRiding});
    learnOutings(ahead, {upTo(sundayEvening(weekOf(today) - kYear - 1)), end}, entered);
    learnHabit(ahead, weeksOf(ahead, {atoms.begin(), end}, entered));
    return ahead;
}

double meanUse(const Ahead& ahead, Counter counter, Date day) {
    const DaysAhead days = daysAhead(ahead, day);
    const double practice = days.practice + days.habit * ahead.habitOutingsPerWeek / 7;
    const double outings = practice + days.races;
    switch (counter) {
        case Counter::Hours:
            return 100 * (practice * ahead.hoursPerOuting + days.races * ahead.hoursPerRace);
        case Counter::Metres:
            return outings * ahead.metresPerOuting;
        case Counter::Outings:
            return outings;
        case Counter::Starts:
            return days.races * ahead.startsPerRace;
        case Counter::Washes:
            return outings * ahead.washesPerOuting;
        case Counter::MudDays:
            return outings * ahead.mudShare;
        case Counter::Crashes:
            return outings * ahead.crashesPerOuting;
        default:
            return std::max(day - ahead.today, 0);
    }
}

std::optional<Date> dayReached(const Ahead& ahead, Counter counter, std::int64_t left) {
    if (left <= 0)
        return ahead.today;
    if (isCalendar(counter))
        return left <= kFarthest ? std::optional(ahead.today.plusDays(static_cast<std::int32_t>(left)))
                                 : std::nullopt;
    // A hair less, so that ten outings of a tenth reach one.
    const double enough = static_cast<double>(left) - 1e-6;
    const auto reached = [&](std::int32_t days) {
        return meanUse(ahead, counter, ahead.today.plusDays(days)) >= enough;
    };
    if (!reached(kFarthest))
        return std::nullopt;
    std::int32_t low = 0;
    std::int32_t high = kFarthest;
    while (high - low > 1) {
        const std::int32_t middle = (low + high) / 2;
        (reached(middle) ? high : low) = middle;
    }
    return ahead.today.plusDays(high);
}

}  // namespace wm::outlook
