// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

#include "core/base/result.h"
#include "core/weekend/rows.h"

namespace wm::weekend {

/// Whether all of these steps and tasks could be done in one plan: no act waits for itself. Those that are
/// put away bind nothing. Errors as planWork.
base::Result<void> checkOrder(std::span<const StepVersion* const> steps,
                              std::span<const upkeep::TaskVersion* const> tasks);

}  // namespace wm::weekend
