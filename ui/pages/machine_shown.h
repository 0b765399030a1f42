// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/base/ids.h"

namespace wm::ui {

class Workbench;

/// The machine that a view of one machine is about: the chosen one, or the only one there is.
std::optional<MachineId> machineShown(const Workbench& workbench);

}  // namespace wm::ui
