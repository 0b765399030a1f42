// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/adjust_verb.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "core/definitions/definitions.h"
#include "core/upkeep/counters.h"
#include "core/verbs/names.h"

// A schedule that a starter brought is made to fit a machine and its rider, in one go.

namespace wm::verbs {

using definitions::Definitions;
using upkeep::Counter;

namespace {

constexpr std::int64_t kMostPercent = 500;

// To what a figure of its kind is said in: tenths of an hour, whole kilometres, whole counts.
std::int64_t grainOf(Counter counter) {
    return counter == Counter::Hours ? 10 : upkeep::partsOfOne(counter);
}

// 6.0 h at 80 % = 4.8 h; 3 washes at 80 % = 2.4, so 2; never less than one grain.
std::int64_t scaled(std::int64_t amount, Counter counter, std::int64_t percent) {
    const std::int64_t grain = grainOf(counter) * 100;
    return std::max<std::int64_t>((amount * percent + grain / 2) / grain, 1) * grainOf(counter);
}

upkeep::Limit scaled(upkeep::Limit limit, std::int64_t percent) {
    if (!upkeep::traitsOf(limit.counter).canBeScaled || (limit.hard && percent > 100))
        return limit;
    limit.every = scaled(limit.every, limit.counter, percent);
    if (limit.first)
        limit.first = scaled(*limit.first, limit.counter, percent);
    if (limit.allowance > 0)
        limit.allowance = scaled(limit.allowance, limit.counter, percent);
    return limit;
}

// New versions of tasks and steps while one adjustment is put together.
class Adjusting {
  public:
    Adjusting(const VerbContext& context, BookChecks& check, MachineId machine)
        : book_(context.book), check_(check), machine_(machine) {}

    void scale(std::int64_t percent) {
        check_.that(percent > 0, Fault::NotPositive, "percent", std::to_string(percent));
        check_.that(percent <= kMostPercent, Fault::TooLarge, "percent", std::to_string(percent),
                    std::to_string(kMostPercent));
        if (check_.failed() || percent == 100)
            return;
        for (const auto* task : book_.tasks(machine_)) {
            if (task->confirmed)
                continue;
            upkeep::TaskVersion version = *task;
            version.limits = scaledLimits(*task, percent);
            if (version.limits == task->limits)
                continue;
            version.source =
                fmt::format("{} % of {}", percent, task->source.empty() ? "what was there" : task->source);
            tasks_.emplace(task->task, std::move(version));
        }
    }

    void turn(const std::vector<TaskId>& tasks, bool on, std::string_view list) {
        for (std::size_t at = 0; at < tasks.size() && !check_.failed(); ++at) {
            const base::Place field = placeIn(list, at, "task");
            const auto* task = book_.task(tasks[at]);
            const bool known = task != nullptr && task->machine == machine_;
            check_.that(known, Fault::Unknown, field, std::to_string(tasks[at].value()));
            check_.that(turned_.insert(tasks[at]).second, Fault::Duplicate, field, known ? task->name : "");
            if (!check_.failed())
                tasks_.try_emplace(tasks[at], *task).first->second.active = on;
        }
    }

    void turn(const std::vector<Adjustment::Edge>& edges) {
        std::set<std::pair<StepId, std::string>> said;
        for (std::size_t at = 0; at < edges.size() && !check_.failed(); ++at) {
            const Adjustment::Edge& edge = edges[at];
            const auto steps = book_.steps(machine_);
            const auto step = std::find_if(steps.begin(), steps.end(),
                                           [&](const auto* each) { return each->step == edge.step; });
            check_.that(step != steps.end(), Fault::Unknown, placeIn("edges", at, "step"),
                        std::to_string(edge.step.value()));
            if (check_.failed())
                return;
            auto& needs = steps_.try_emplace(edge.step, **step).first->second.needs;
            const auto need = std::find_if(needs.begin(), needs.end(),
                                           [&](const auto& each) { return each.code == edge.needs; });
            const base::Place field = placeIn("edges", at, "needs");
            check_.that(need != needs.end(), Fault::Unknown, field, edge.needs);
            check_.that(said.insert({edge.step, edge.needs}).second, Fault::Duplicate, field, edge.needs);
            if (check_.failed())
                return;
            check_.that(need->onlySomeModels, Fault::Inconsistent, field, edge.needs);
            need->applies = edge.applies;
        }
    }

    // What stays as it is needs no new version.
    std::size_t write(Definitions& definitions) {
        std::size_t count = 0;
        for (auto& [id, version] : steps_)
            if (const auto* step = stepOfToday(id); step != nullptr && step->needs != version.needs)
                count += add(definitions, std::move(version), "edges.");
        for (auto& [id, version] : tasks_)
            if (const auto* task = book_.task(id);
                task->limits != version.limits || task->active != version.active)
                count += add(definitions, std::move(version), "tasks.");
        return count;
    }

  private:
    [[nodiscard]] auto stepOfToday(StepId id) const -> const weekend::StepVersion* {
        const auto steps = book_.steps(machine_);
        const auto found = std::ranges::find_if(steps, [&](const auto* step) { return step->step == id; });
        return found == steps.end() ? nullptr : *found;
    }

    template <class V>
    std::size_t add(Definitions& definitions, V version, const char* place) {
        version.id = {};
        version.entered = 0;
        version.validFrom = book_.today();
        definitions.add(std::move(version), book_.today(), place);
        return 1;
    }

    const Book& book_;
    BookChecks& check_;
    MachineId machine_;
    std::map<TaskId, upkeep::TaskVersion> tasks_;
    std::map<StepId, weekend::StepVersion> steps_;
    std::set<TaskId> turned_;
};

}  // namespace

std::vector<upkeep::Limit> scaledLimits(const upkeep::TaskVersion& task, std::int64_t percent) {
    std::vector<upkeep::Limit> limits = task.limits;
    if (!task.confirmed)
        for (upkeep::Limit& limit : limits)
            limit = scaled(limit, percent);
    return limits;
}

Result<Change> adjustSchedule(const VerbContext& context, MachineId machine, const Adjustment& adjustment) {
    BookChecks check(context.book);
    Entry entry(context.book.ledger(), context.newId);
    const auto* card = check.row<items::Machine>("machine", machine);
    if (check.failed())
        return check.refusal();
    Definitions definitions(check, context.book, entry, machine);
    Adjusting adjusting(context, check, machine);
    adjusting.scale(adjustment.percent);
    adjusting.turn(adjustment.off, false, "off");
    adjusting.turn(adjustment.on, true, "on");
    adjusting.turn(adjustment.edges);
    const std::size_t count = check.failed() ? 0 : adjusting.write(definitions);
    check.that(count > 0, Fault::NothingToDo, "percent", std::to_string(adjustment.percent));
    definitions.write();
    if (check.failed())
        return check.refusal();
    return std::move(entry).change(phrase("Undo", "adjusted the schedule of %1").arg(card->name));
}

}  // namespace wm::verbs
