// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

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
    const std::int64_t days =
        std::max(later.at.date - earlier.at.date + (later.at.part > earlier.at.part ? 1 : 0), 1);
    if (ranBetween(earlier, later).value_or(0) > days * meter.mostADay)
        return refuse(Fault::MeterJumps, "shown", meter.text(later.shown), least);
    return {};
}

Result<void> check(const std::vector<Figure>& others, const Figure& reading, const Meter& meter) {
    if (auto fine = alone(reading, meter); !fine)
        return fine;
    bool stands = false;
    const Figure* earlier = nullptr;
    const Figure* later = nullptr;
    for (const Figure& other : others) {
        if (other.id == reading.id)
            continue;
        if (comesBefore(reading, other)) {
            later = &other;
            break;
        }
        stands = standsAfter(stands, other);
        earlier = &other;
    }
    if (earlier != nullptr)
        if (auto fine = follows(*earlier, stands, reading, meter); !fine)
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
    for (const Figure& figure : figures) {
        auto fine = alone(figure, meter);
        if (fine && earlier != nullptr)
            fine = follows(*earlier, stands, figure, meter);
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

NotedSum notedIn(const std::vector<Outing>& outings, Moment from, Moment to) {
    NotedSum noted;
    for (const Outing& outing : outings) {
        const Moment at{outing.date, DayPart::Riding};
        if (!outing.hours || at <= from || to < at)
            continue;
        noted.hours += *outing.hours;
        ++noted.outings;
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
    for (const Figure& figure : figures) {
        const auto more = earlier == nullptr || stands ? std::nullopt : ranBetween(*earlier, figure);
        ran = ran && more ? std::optional(*ran + *more) : std::nullopt;
        stands = standsAfter(stands, figure);
        earlier = &figure;
        if (figure.at.part == DayPart::Riding)
            continue;
        if (from != nullptr && ran)
            if (const NotedSum noted = notedIn(facts.outings, from->at, figure.at);
                isFarBeyond(noted, *ran, hiddenBy(*from, figure)))
                stood.push_back({from->at, figure.at, figure.id, noted.hours, units::Hours{*ran}});
        from = &figure;
        ran = 0;
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
