// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/weekend/plan.h"

namespace wm::weekend {

/// The access graph of a generic machine: minutes off and on, and what must be off before (common practice,
/// from memory). `someModels` = with the needs that only some models have.
std::vector<StepVersion> genericMachine(bool someModels);

std::vector<const StepVersion*> pointersTo(const std::vector<StepVersion>& steps);

Job makeJob(std::string name, std::int64_t minutes, std::vector<std::string> steps,
            upkeep::BodyState state = upkeep::BodyState::Any);

}  // namespace wm::weekend
