// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/weekend/plan.h"

namespace wm::weekend {

/// The access graph of a generic machine with the minutes of the project brief, section 3 (common practice,
/// from memory; off, on, needs). `someModels` = the edges that the brief marks with an asterisk.
std::vector<StepVersion> genericMachine(bool someModels);

std::vector<const StepVersion*> pointersTo(const std::vector<StepVersion>& steps);

Job makeJob(std::string name, std::int64_t minutes, std::vector<std::string> steps,
            upkeep::BodyState state = upkeep::BodyState::Any);

}  // namespace wm::weekend
