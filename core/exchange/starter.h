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

/// A starter schedule: what a kind of machine usually needs, as common practice has it, nothing confirmed, no
/// torque.
struct Starter {
    std::string name;  ///< "two-stroke motocross"
    std::string about;
    std::vector<weekend::StepVersion> steps;
    std::vector<fastening::JointVersion> joints;
    std::vector<upkeep::TaskVersion> tasks;
};

/// Reads a starter text (resources/starters/*.json, described by resources/starter.schema.json). Ids,
/// machine, dates and order of entry are left blank for ledger::adoptSchedule. Errors: Malformed with the
/// place; a torque figure is refused.
base::Result<Starter> readStarter(std::string_view text);

}  // namespace wm::exchange
