// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

#include "core/upkeep/task.h"

namespace wm::upkeep {

/// What stands as the source of an amount that had none before its task got one.
inline constexpr std::string_view kNoSource = "no source";

/// Where the amount of a line comes from: its own source, else that of its task.
const std::string& sourceOf(const TaskVersion& task, const KitLine& line);

/// A new version of a task whose source is another one than before says something of its interval alone: each
/// amount in it that stood there so, under the task's old source, gets that one for its own.
void keepSources(const TaskVersion& stood, TaskVersion& version);

}  // namespace wm::upkeep
