// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/usage/exposure.h"
#include "core/usage/metering.h"

namespace wm::usage {

using base::Fault;
using base::refuse;
using base::Result;

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

}  // namespace

Result<void> checkReading(const UseFacts& facts, const HourReading& reading) {
    return check(figuresOf(facts.hourReadings), figureOf(reading), kHourMeter);
}

Result<void> checkReading(const UseFacts& facts, const DistanceReading& reading) {
    return check(figuresOf(facts.distanceReadings), figureOf(reading), kOdometer);
}

}  // namespace wm::usage
