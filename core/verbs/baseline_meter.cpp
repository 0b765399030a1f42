// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/baseline_meter.h"

#include <algorithm>

#include "core/picture/facts.h"
#include "core/verbs/names.h"

namespace wm::verbs {

using base::refuse;
using calendar::DayPart;
using calendar::Moment;
using units::Hours;

Hours bestLife(const Book& book, MachineId machine, Moment when) {
    return book.lifeAt(machine, when).hours.best;
}

Result<Shown> whenShown(const Book& book, MachineId machine, Hours shown) {
    auto readings = readingsOf(book.ledger(), machine).hourReadings;
    if (readings.empty())
        return refuse(Fault::Inconsistent, "meter", units::hoursText(shown));
    std::sort(readings.begin(), readings.end(),
              [](const auto& a, const auto& b) { return usage::comesBefore(a, b); });
    const auto lifeAtReading = [&](const usage::HourReading& reading) {
        return bestLife(book, machine, {reading.date, reading.part});
    };
    // From the newest stretch backwards: a meter that was replaced may have shown a figure twice.
    for (std::size_t at = readings.size(); at-- > 0;) {
        const bool isLast = at + 1 == readings.size();
        const auto& next = readings[isLast ? at : at + 1];
        const bool countedOn = next.event == usage::MeterEvent::Plain ||
                               next.event == usage::MeterEvent::Stopped ||
                               next.event == usage::MeterEvent::Resumed;
        const Hours end = isLast || countedOn ? next.shown : next.before.value_or(readings[at].shown);
        if (readings[at].shown <= shown && shown <= end)
            return Shown{lifeAtReading(readings[at]) + (shown - readings[at].shown),
                         Moment{readings[at].date, readings[at].part}};
    }
    if (shown > readings.front().shown)
        return refuse(Fault::TooLarge, "meter", units::hoursText(shown),
                      units::hoursText(readings.back().shown));
    return Shown{lifeAtReading(readings.front()) - (readings.front().shown - shown), std::nullopt};
}

std::optional<Moment> lastMomentWith(const Book& book, const items::Machine& machine, Hours life) {
    const Moment first{machine.since, DayPart::BeforeRiding};
    if (life < bestLife(book, machine.id, first))
        return std::nullopt;
    const auto evening = [&](std::int32_t days) {
        return Moment{machine.since.plusDays(days), DayPart::AfterRiding};
    };
    std::int32_t holds = -1;
    std::int32_t fails = book.today() - machine.since + 1;
    while (fails - holds > 1) {
        const std::int32_t middle = holds + (fails - holds) / 2;
        (bestLife(book, machine.id, evening(middle)) <= life ? holds : fails) = middle;
    }
    return holds < 0 ? first : evening(holds);
}

}  // namespace wm::verbs
