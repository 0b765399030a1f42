// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/upkeep/task.h"

namespace wm::ui {

/// The part of the machine that a task is about, as tasks are grouped: "engine" of "engine/piston", "wheels"
/// of either wheel, "machine" of what names no part.
QString partWords(const upkeep::TaskVersion& task);

}  // namespace wm::ui
