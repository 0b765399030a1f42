// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/left_off.h"

#include <algorithm>

namespace wm::weekend {

std::vector<std::string> leftOff(std::span<const Act> acts) {
    std::vector<std::string> off;
    for (const Act& act : acts) {
        if (act.kind == ActKind::Off)
            off.push_back(act.step);
        if (act.kind == ActKind::On)
            std::erase(off, act.step);
    }
    return off;
}

std::vector<std::string> waitsFor(std::span<const Act> acts, const upkeep::TaskVersion& task) {
    std::vector<std::string> waits = leftOff(acts);
    std::erase_if(waits, [&](const std::string& step) {
        const upkeep::ActRef on{upkeep::Deed::On, step};
        const upkeep::ActRef job{upkeep::Deed::Job, task.code};
        return std::none_of(task.edges.begin(), task.edges.end(), [&](const upkeep::Edge& edge) {
            return edge.earlier == on && edge.later == job;
        });
    });
    return waits;
}

}  // namespace wm::weekend
