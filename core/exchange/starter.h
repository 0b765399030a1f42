// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/fastening/rows.h"
#include "core/upkeep/task.h"
#include "core/weekend/rows.h"

namespace wm::exchange {

/// The version of the starter text.
inline constexpr int kStarterFormat = 1;
/// The source of every definition of a starter that names no other.
inline constexpr std::string_view kCommonPractice = "common practice";

/// A starter schedule: what a kind of machine usually needs, as common practice has it, nothing confirmed, no
/// torque.
struct Starter {
    std::string name;  ///< "two-stroke motocross"
    std::string about;
    std::vector<weekend::StepVersion> steps;
    std::vector<fastening::JointVersion> joints;
    std::vector<upkeep::TaskVersion> tasks;
};

/// Reads a starter text (resources/starters/*.json, described by resources/starter.schema.json). Keys are
/// those of the rows; a key that is left out takes the row's default. Amounts of limits are said with their
/// unit ("15 h", "2 mud days"), follow-ups by "due": "after 2 h". Ids, machine, dates and order of entry are
/// left blank for verbs::adoptSchedule.
/// Errors: Malformed with the place ("tasks[3].limits[0].every"), NewerFormat, Unknown (a code or word that
/// is not there), Duplicate (a code), Cycle (access steps that need each other) and the faults of the single
/// values. There is no key for a torque or for "confirmed": a text that has one is refused.
base::Result<Starter> readStarter(std::string_view text);

}  // namespace wm::exchange
