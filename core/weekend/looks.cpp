// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/looks.h"

#include <algorithm>

#include "core/upkeep/unknown.h"

namespace wm::weekend {

namespace {

bool holds(const StepVersion& step, std::string_view joint) {
    return std::any_of(step.joints.begin(), step.joints.end(),
                       [&](const base::Code& each) { return each.code == joint; });
}

}  // namespace

bool cracks(const upkeep::TaskVersion& task, std::string_view joint) {
    return std::any_of(task.edges.begin(), task.edges.end(), [&](const upkeep::Edge& edge) {
        return (edge.earlier.deed == upkeep::Deed::Crack && edge.earlier.code == joint) ||
               (edge.later.deed == upkeep::Deed::Crack && edge.later.code == joint);
    });
}

bool looksAt(const upkeep::TaskVersion& task, std::string_view joint,
             std::span<const StepVersion* const> steps, std::span<const std::string> off) {
    if (!upkeep::isALook(task) || cracks(task, joint))
        return false;
    bool isHeld = false;
    for (const StepVersion* step : steps)
        if (holds(*step, joint)) {
            if (std::find(off.begin(), off.end(), step->code) != off.end())
                return false;
            isHeld = true;
        }
    return isHeld;
}

}  // namespace wm::weekend
