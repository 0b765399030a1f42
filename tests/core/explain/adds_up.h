// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "core/explain/why.h"

namespace wm::explain {

/// The first step whose children do not make its figure, in words; nothing if all of them do.
std::optional<std::string> whereItDoesNotAddUp(const Step& step);

/// The tree as indented lines, one a step.
std::string print(const Step& step, int depth = 0);

}  // namespace wm::explain
