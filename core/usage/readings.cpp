// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <span>

#include "core/usage/meter_doubts.h"
#include "core/usage/metering.h"

namespace wm::usage {

using base::Fault;
using base::refuse;
using base::Result;
using calendar::DayPart;
using calendar::Moment;

namespace {

struct Meter {
    std::string (*text)(std::int64_t);
    std::int64_t mostADay;
};

constexpr Meter kHourMeter{[](std::int64_t count) { return units::hoursText(units::Hours{count}); },
                           kMostHoursADay.count()};
constexpr Meter kOdometer{[](std::int64_t count) { return units::kilometresText(units::Metres{count}); },
                          kMostMetresADay.count()};

Result<void> alone(const Figure& figure, const Meter& meter) {
    if (figure.shown < 0)
        return refuse(Fault::Negative, "shown", meter.text(figure.shown));
    if (figure.before.value_or(0) < 0)
        return refuse(Fault::Negative, "before", meter.text(*figure.before));
    if (figure.event != MeterEvent::RolledOver)
        return {};
    if (!figure.rollsAt)
        return refuse(Fault::Empty, "rolls_at");
    if (*figure.rollsAt <= figure.shown)
        return refuse(Fault::OutOfOrder, "rolls_at", meter.text(*figure.rollsAt), meter.text(figure.shown));
    return {};
}

// On how many days it may have run from one moment to a later one.
std::int64_t daysFor(Moment from, Moment to) {
    return std::max(to.date - from.date + (to.part > from.part ? 1 : 0), 1);
}

// Does `later` follow from `earlier`, after which the meter stood still or not?
Result<void> follows(const Figure& earlier, bool stands, const Figure& later, const Meter& meter) {
    const bool countsOn = later.event == MeterEvent::Plain || later.event == MeterEvent::Stopped;
    const std::string least = meter.text(earlier.shown);
    if (countsOn && later.shown < earlier.shown)
        return refuse(Fault::MeterRunsBack, "shown", meter.text(later.shown), least);
    if (countsOn && stands && later.shown > earlier.shown)
        return refuse(Fault::Inconsistent, "event", meter.text(later.shown), least);
    if (later.event == MeterEvent::RolledOver && later.rollsAt && *later.rollsAt <= earlier.shown)
        return refuse(Fault::OutOfOrder, "rolls_at", meter.text(*later.rollsAt), least);
    const bool ends = later.event == MeterEvent::Replaced || later.event == MeterEvent::Reset;
    if (ends && later.before && *later.before < earlier.shown)
        return refuse(Fault::MeterRunsBack, "before", meter.text(*later.before), least);
    if (ranBetween(earlier, later).value_or(0) > daysFor(earlier.at, later.at) * meter.mostADay)
        return refuse(Fault::MeterJumps, "shown", meter.text(later.shown), least);
    return {};
}

// A day holds no more by many readings than by one: what it ran since the last one of an earlier day, or
// since the first of its own.
Result<void> dayHolds(std::span<const Figure> before, const Figure& reading, const Meter& meter) {
    std::int64_t ran = 0;
    const Figure* next = &reading;
    for (auto each = before.rbegin(); each != before.rend(); ++each) {
        ran += ranBetween(*each, *next).value_or(0);
        next = &*each;
        if (each->at.date < reading.at.date)
            break;
    }
    if (ran > daysFor(next->at, reading.at) * meter.mostADay)
        return refuse(Fault::MeterJumps, "shown", meter.text(reading.shown), meter.text(next->shown));
    return {};
}

Result<void> check(const std::vector<Figure>& others, const Figure& reading, const Meter& meter) {
    if (auto fine = alone(reading, meter); !fine)
        return fine;
    bool stands = false;
    std::vector<Figure> before;
    const Figure* later = nullptr;
    for (const Figure& other : others) {
        if (other.id == reading.id)
            continue;
        if (comesBefore(reading, other)) {
            later = &other;
            break;
        }
        stands = standsAfter(stands, other);
        before.push_back(other);
    }
    if (!before.empty())
        if (auto fine = follows(before.back(), stands, reading, meter); !fine)
            return fine;
    if (auto fine = dayHolds(before, reading, meter); !fine)
        return fine;
    if (later != nullptr && !follows(reading, standsAfter(stands, reading), *later, meter))
        return refuse(Fault::OutOfOrder, "shown", meter.text(reading.shown), meter.text(later->shown));
    return {};
}

// Each reading against the one before it, as if it were said now.
std::vector<OddReading> oddOf(const std::vector<Figure>& figures, const Meter& meter) {
    std::vector<OddReading> odd;
    bool stands = false;
    const Figure* earlier = nullptr;
    std::size_t before = 0;
    for (const Figure& figure : figures) {
        auto fine = alone(figure, meter);
        if (fine && earlier != nullptr)
            fine = follows(*earlier, stands, figure, meter);
        if (fine)
            fine = dayHolds(std::span(figures).first(before), figure, meter);
        ++before;
        if (!fine) {
            odd.push_back({.reading = figure.id, .at = figure.at, .error = fine.error()});
            if (earlier != nullptr)
                odd.back().from = earlier->at;
            odd.back().isUnmetered = earlier != nullptr && (stands || !ranBetween(*earlier, figure));
        }
        stands = standsAfter(stands, figure);
        earlier = &figure;
    }
    return odd;
}

constexpr units::Hours kWholeHour{100};

// What was noted from one reading to a later one, and in how many outings.
struct NotedSum {
    units::Hours hours{};
    std::int64_t outings = 0;
};

// By the reading that closes the stretch in which each was ridden.
std::vector<NotedSum> notedBy(const std::vector<Outing>& outings, std::span<const Figure> figures) {
    std::vector<Note> notes;
    for (const Outing& outing : outings)
        if (outing.hours)
            notes.push_back(
                {{outing.date, DayPart::Riding}, outing.hours->count(), outing.id.value(), outing.entered});
    std::vector<NotedSum> noted(figures.size() + 1);
    const auto closed = closedBy(figures, notes);
    for (std::size_t i = 0; i < notes.size(); ++i) {
        noted[closed[i]].hours += units::Hours{*notes[i].amount};
        ++noted[closed[i]].outings;
    }
    return noted;
}

// A meter that shows whole hours may have run one more than it says.
std::int64_t hiddenBy(const Figure& from, const Figure& to) {
    const auto isWhole = [](const Figure& figure) { return figure.shown % kWholeHour.count() == 0; };
    return isWhole(from) && isWhole(to) ? kWholeHour.count() : 0;
}

bool isFarBeyond(const NotedSum& noted, std::int64_t ran, std::int64_t hidden) {
    const std::int64_t hours = noted.hours.count();
    const std::int64_t tolerance =
        20 * (noted.outings * kNoteTolerance.count() + hidden) + hours;  // twentieths
    return hours > kMostNotedOfRun * ran && 20 * (hours - ran) > tolerance;
}

}  // namespace

std::vector<OddReading> oddReadings(const std::vector<HourReading>& readings) {
    return oddOf(figuresOf(readings), kHourMeter);
}

std::vector<OddReading> oddReadings(const std::vector<DistanceReading>& readings) {
    return oddOf(figuresOf(readings), kOdometer);
}

std::vector<MeterStood> whereItStood(const UseFacts& facts) {
    std::vector<MeterStood> stood;
    bool stands = false;
    const Figure* from = nullptr;  // where the stretch begins whose `ran` is added up
    std::optional<std::int64_t> ran;
    const Figure* earlier = nullptr;
    const auto figures = figuresOf(facts.hourReadings);
    const auto notedUpTo = notedBy(facts.outings, figures);
    NotedSum noted;  // since `from`
    for (std::size_t i = 0; i < figures.size(); ++i) {
        const Figure& figure = figures[i];
        noted.hours += notedUpTo[i].hours;
        noted.outings += notedUpTo[i].outings;
        const auto more = earlier == nullptr || stands ? std::nullopt : ranBetween(*earlier, figure);
        ran = ran && more ? std::optional(*ran + *more) : std::nullopt;
        stands = standsAfter(stands, figure);
        earlier = &figure;
        if (figure.at.part == DayPart::Riding)
            continue;
        if (from != nullptr && ran && isFarBeyond(noted, *ran, hiddenBy(*from, figure)))
            stood.push_back({from->at, figure.at, figure.id, noted.hours, units::Hours{*ran}});
        from = &figure;
        ran = 0;
        noted = {};
    }
    return stood;
}

tl::unexpected<base::Error> questionOf(const MeterStood& stood) {
    return refuse(Fault::MeterStood, "noted", units::hoursText(stood.noted) + " h",
                  units::hoursText(stood.ran) + " h");
}

Result<void> checkReading(const UseFacts& facts, const HourReading& reading) {
    return check(figuresOf(facts.hourReadings), figureOf(reading), kHourMeter);
}

Result<void> checkReading(const UseFacts& facts, const DistanceReading& reading) {
    return check(figuresOf(facts.distanceReadings), figureOf(reading), kOdometer);
}

}  // namespace wm::usage
