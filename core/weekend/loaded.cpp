// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/loaded.h"

#include <algorithm>

namespace wm::weekend {

using upkeep::Hazard;

namespace {

bool isOf(const Act& act, const upkeep::TaskVersion& task) {
    if (act.kind == ActKind::Crack)
        return std::any_of(task.joints.begin(), task.joints.end(),
                           [&](const base::Code& each) { return each.code == act.joint; });
    return act.kind == ActKind::Do &&
           std::any_of(task.doings.begin(), task.doings.end(), [&](const upkeep::Doing& each) {
               return each.comes == upkeep::Comes::Before && each.code == act.doing;
           });
}

}  // namespace

std::vector<Hazard> loadsAt(const Act& act, const upkeep::TaskVersion& task) {
    std::vector<Hazard> loads;
    if (isOf(act, task))
        for (const upkeep::Caution& caution : task.cautions)
            if (caution.hazard == Hazard::GasCharged || caution.hazard == Hazard::Spring)
                loads.push_back(caution.hazard);
    return loads;
}

}  // namespace wm::weekend
