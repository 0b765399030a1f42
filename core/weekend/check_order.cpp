// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/check_order.h"

#include "core/weekend/act_graph.h"

namespace wm::weekend {

base::Result<void> checkOrder(std::span<const StepVersion* const> steps,
                              std::span<const upkeep::TaskVersion* const> tasks) {
    std::vector<const StepVersion*> active;
    std::vector<Job> jobs;
    for (const StepVersion* step : steps)
        if (step->active) {
            active.push_back(step);
            jobs.push_back({.name = step->name, .steps = {step->code}});
        }
    for (const upkeep::TaskVersion* task : tasks) {
        if (!task->active)
            continue;
        Job job{.name = task->name, .definition = task};
        for (const base::Code& code : task->steps)
            job.steps.push_back(code.code);
        jobs.push_back(std::move(job));
    }
    const auto teardown = Teardown::of(active, jobs);
    if (!teardown)
        return tl::unexpected(teardown.error());
    const auto order = orderOfActs(*teardown, jobs, {});
    return order ? base::Result<void>{} : tl::unexpected(order.error());
}

}  // namespace wm::weekend
