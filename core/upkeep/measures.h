// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "core/upkeep/task.h"

namespace wm::upkeep {

/// What a task measures under this name, or nullptr.
const MeasurePoint* pointNamed(const TaskVersion& task, std::string_view name);

/// True if a value is beyond a limit of its point; at the limit it is not.
bool isOutside(const MeasurePoint& point, const units::Decimal& value);

}  // namespace wm::upkeep
