// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/calendar/date.h"
#include "core/picture/ledger.h"
#include "core/usage/exposure.h"

namespace wm::picture {

// What the facts of a file say of one thing, for whoever does not ask for more than that.

/// The version of a task on a day, the first one if the day is before it, or nullptr for an unknown task.
const upkeep::TaskVersion* versionOn(const Ledger& ledger, TaskId task, calendar::Date date);
/// The event that a machine is entered for on a day, if it is held, or nullptr.
const outlook::Event* eventOn(const Ledger& ledger, MachineId machine, calendar::Date day);
/// True if an end of this snag counts.
bool hasEnded(const Ledger& ledger, SnagId snag);
std::string machineName(const Ledger& ledger, MachineId machine);
/// The meter readings of one machine that count; no other use.
usage::UseFacts readingsOf(const Ledger& ledger, MachineId machine);

/// True if `origin` is a record or crash of this machine that counts, or a failed calibration: something that
/// brings follow-ups.
bool bringsFollowUps(const Ledger& ledger, MachineId machine, std::int64_t origin);
/// True if this follow-up already has an answer that counts.
bool isAnswered(const Ledger& ledger, std::int64_t origin, std::string_view what);
/// The place of a meter figure that came with something done that day: in the evening, or between the day's
/// riding if only a reading of the same evening stands against it (two outings, the first one noted late or
/// corrected).
usage::HourReading placed(const Ledger& ledger, usage::HourReading reading);
}  // namespace wm::picture
