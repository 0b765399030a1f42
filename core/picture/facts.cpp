// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/picture/facts.h"

#include <algorithm>

#include "core/calendar/in_force.h"

namespace wm::picture {

const upkeep::TaskVersion* versionOn(const Ledger& ledger, TaskId task, calendar::Date date) {
    const auto isMeant = [task](const upkeep::TaskVersion& version) { return version.task == task; };
    const auto versions = ledger.all<upkeep::TaskVersion>();
    if (const auto* version = calendar::inForce(versions, date, isMeant))
        return version;
    const upkeep::TaskVersion* first = nullptr;
    for (const auto& version : versions)
        if (isMeant(version) && (first == nullptr || version.validFrom < first->validFrom))
            first = &version;
    return first;
}

const outlook::Event* eventOn(const Ledger& ledger, MachineId machine, calendar::Date day) {
    for (const outlook::Event& event : ledger.all<outlook::Event>()) {
        if (event.calledOff || day < event.first || event.last < day)
            continue;
        if (std::any_of(event.entries.begin(), event.entries.end(),
                        [machine](const outlook::Entry& entry) { return entry.machine == machine; }))
            return &event;
    }
    return nullptr;
}

bool hasEnded(const Ledger& ledger, SnagId snag) {
    const auto& ends = ledger.all<upkeep::SnagEnd>();
    return std::any_of(ends.begin(), ends.end(), [snag](const auto& end) { return end.snag == snag; });
}

std::string machineName(const Ledger& ledger, MachineId machine) {
    const auto* card = ledger.find<items::Machine>(machine);
    return card == nullptr ? std::string{} : card->name;
}

usage::UseFacts readingsOf(const Ledger& ledger, MachineId machine) {
    usage::UseFacts facts;
    for (const auto& reading : ledger.all<usage::HourReading>())
        if (reading.machine == machine)
            facts.hourReadings.push_back(reading);
    for (const auto& reading : ledger.all<usage::DistanceReading>())
        if (reading.machine == machine)
            facts.distanceReadings.push_back(reading);
    return facts;
}

bool bringsFollowUps(const Ledger& ledger, MachineId machine, std::int64_t origin) {
    if (ledger.strikeOf(origin) != nullptr)
        return false;
    const auto* record = ledger.find<upkeep::Record>(RecordId{origin});
    const auto* crash = ledger.find<usage::Crash>(CrashId{origin});
    // A tool that was found out of tolerance asks for re-checks on every machine that it was used on.
    const auto* calibration = ledger.find<fastening::Calibration>(CalibrationId{origin});
    // What an item brings along shows on the machine that carries it now.
    return record != nullptr || (calibration != nullptr && !calibration->foundWithin) ||
           (crash != nullptr && crash->machine == machine);
}

bool isAnswered(const Ledger& ledger, std::int64_t origin, std::string_view what) {
    const auto& answers = ledger.all<upkeep::FollowUpAnswer>();
    return std::any_of(answers.begin(), answers.end(), [&](const upkeep::FollowUpAnswer& answer) {
        return answer.origin == origin && answer.what == what;
    });
}

usage::HourReading placed(const Ledger& ledger, usage::HourReading reading) {
    const usage::UseFacts facts = readingsOf(ledger, reading.machine);
    if (reading.part != calendar::DayPart::AfterRiding || usage::checkReading(facts, reading))
        return reading;
    usage::HourReading between = reading;
    between.part = calendar::DayPart::Riding;
    return usage::checkReading(facts, between) ? between : reading;
}

}  // namespace wm::picture
