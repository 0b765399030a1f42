// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/step_effect.h"

#include <algorithm>

#include "core/book/evening.h"
#include "core/calendar/in_force.h"

namespace wm::book {

namespace {

std::optional<weekend::Plan> planIfAny(base::Result<weekend::Plan> plan) {
    return plan ? std::optional(*std::move(plan)) : std::nullopt;
}

std::optional<weekend::Plan> pickedPlan(const Book& book, MachineId machine) {
    const auto jobs = book.pickedJobs(machine);
    return jobs.empty() ? std::nullopt : planIfAny(planFor(book, machine, jobs));
}

}  // namespace

const weekend::StepVersion* stepOf(const Book& book, StepId step) {
    return calendar::inForce(book.ledger().all<weekend::StepVersion>(), book.today(),
                             [step](const weekend::StepVersion& version) { return version.step == step; });
}

base::Result<weekend::Plan> planOfStep(const Book& book, MachineId machine, std::string_view code) {
    const auto* step = book.step(machine, code);
    if (step == nullptr)
        return base::refuse(base::Fault::Unknown, "step", std::string(code));
    return planFor(book, machine, {{.name = step->name, .steps = {step->code}}});
}

std::vector<std::string> neededBy(const Book& book, MachineId machine, std::string_view code) {
    std::vector<std::string> names;
    const auto isIt = [code](const auto& each) { return each.code == code; };
    for (const auto* task : book.tasks(machine))
        if (std::any_of(task->steps.begin(), task->steps.end(), isIt))
            names.push_back(task->name);
    for (const auto* step : book.steps(machine))
        if (std::any_of(step->needs.begin(), step->needs.end(), isIt))
            names.push_back(step->name);
    return names;
}

std::string nameOf(const upkeep::ActRef& act, const std::vector<const weekend::StepVersion*>& steps,
                   const std::vector<const fastening::JointVersion*>& joints,
                   const std::vector<const upkeep::TaskVersion*>& tasks) {
    const auto named = [&](const auto& all) -> std::string {
        const auto at =
            std::find_if(all.begin(), all.end(), [&](const auto* v) { return v->code == act.code; });
        return at == all.end() ? act.code : (*at)->name;
    };
    switch (act.deed) {
        case upkeep::Deed::Crack:
        case upkeep::Deed::Torque:
            return named(joints);
        case upkeep::Deed::Off:
        case upkeep::Deed::On:
            return named(steps);
        case upkeep::Deed::Job:
            return named(tasks);
        case upkeep::Deed::Do:
            break;
    }
    const auto said = [&](const auto& all) -> const upkeep::Doing* {
        for (const auto* version : all)
            for (const upkeep::Doing& doing : version->doings)
                if (doing.code == act.code)
                    return &doing;
        return nullptr;
    };
    const upkeep::Doing* doing = said(steps);
    if (doing == nullptr)
        doing = said(tasks);
    return doing == nullptr ? act.code : doing->what;
}

std::string nameOf(const Book& book, MachineId machine, const upkeep::ActRef& act) {
    return nameOf(act, book.steps(machine), book.joints(machine), book.tasks(machine));
}

bool sameOrder(const weekend::Plan& a, const weekend::Plan& b) {
    return std::equal(a.acts.begin(), a.acts.end(), b.acts.begin(), b.acts.end(),
                      [](const weekend::Act& one, const weekend::Act& other) {
                          return one.kind == other.kind && one.step == other.step && one.job == other.job &&
                                 one.joint == other.joint && one.doing == other.doing &&
                                 one.torques == other.torques && one.text == other.text;
                      });
}

bool StepEffect::Compared::changesMinutes() const {
    return now && after && now->work != after->work;
}

bool StepEffect::Compared::changesOrder() const {
    return now && after && !sameOrder(*now, *after);
}

namespace {

bool isOpened(const Book& book, MachineId machine, const std::string& joint) {
    const auto opens = [&](const auto* version) {
        return std::any_of(version->joints.begin(), version->joints.end(),
                           [&](const base::Code& each) { return each.code == joint; });
    };
    const auto steps = book.steps(machine);
    const auto tasks = book.tasks(machine);
    return std::any_of(steps.begin(), steps.end(), opens) || std::any_of(tasks.begin(), tasks.end(), opens);
}

std::vector<std::string> unopenedOf(const Book& book, MachineId machine, std::string_view code) {
    std::vector<std::string> names;
    const auto* step = book.step(machine, std::string(code));
    if (step == nullptr)
        return names;
    for (const upkeep::Edge& edge : step->edges)
        for (const upkeep::ActRef* act : {&edge.earlier, &edge.later}) {
            const bool isOfAJoint = act->deed == upkeep::Deed::Crack || act->deed == upkeep::Deed::Torque;
            if (!isOfAJoint || isOpened(book, machine, act->code))
                continue;
            if (auto name = nameOf(book, machine, *act);
                std::find(names.begin(), names.end(), name) == names.end())
                names.push_back(std::move(name));
        }
    return names;
}

}  // namespace

StepEffect effectOf(const Book& now, const Book& after, MachineId machine, std::string_view code) {
    return {.alone = {planIfAny(planOfStep(now, machine, code)), planIfAny(planOfStep(after, machine, code))},
            .picked = {pickedPlan(now, machine), pickedPlan(after, machine)},
            .unopened = unopenedOf(after, machine, code)};
}

}  // namespace wm::book
