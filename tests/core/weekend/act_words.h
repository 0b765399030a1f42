// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/weekend/plan.h"

namespace wm::weekend {

/// "-rear" off, "+rear" on, "crack nut", "do pump", the name of a job ...
std::vector<std::string> actWords(const Plan& plan);

}  // namespace wm::weekend
