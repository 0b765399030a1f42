// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine_shown.h"

#include "ui/workbench/workbench.h"

namespace wm::ui {

std::optional<MachineId> machineShown(const Workbench& workbench) {
    if (workbench.chosen())
        return workbench.chosen();
    const auto machines = workbench.book()->machines();
    return machines.size() == 1 ? std::optional(machines.front()->id) : std::nullopt;
}

}  // namespace wm::ui
