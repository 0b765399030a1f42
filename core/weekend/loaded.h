// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/weekend/plan.h"

namespace wm::weekend {

/// Which loads (gas, a spring) the act meets because of the task: where a joint of its own is cracked, and at
/// what is done before it. There the caution is needed; at the job the cap is open already.
std::vector<upkeep::Hazard> loadsAt(const Act& act, const upkeep::TaskVersion& task);

}  // namespace wm::weekend
