// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/weekend/plan.h"

namespace wm::weekend {

/// Codes of the access steps that are still off when the acts are done, in the order in which they come off.
std::vector<std::string> leftOff(std::span<const Act> acts);

/// Of those the ones that the task comes after, by its edges: a brake is not pumped while its wheel is out.
std::vector<std::string> waitsFor(std::span<const Act> acts, const upkeep::TaskVersion& task);

}  // namespace wm::weekend
