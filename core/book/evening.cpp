// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/book/evening.h"

#include <algorithm>
#include <set>

#include "core/book/state.h"
#include "core/fastening/danger.h"

namespace wm::book {

namespace {

bool hasSafety(const MachineWork& work) {
    return std::any_of(work.jobs.begin(), work.jobs.end(),
                       [](const weekend::Job& job) { return job.safety; });
}

// Does it need something off that is not off for every job anyway, such as the machine on its stand?
bool needsOpening(const Book& book, const upkeep::TaskVersion& task) {
    return std::any_of(task.steps.begin(), task.steps.end(), [&](const base::Code& code) {
        const weekend::StepVersion* step = book.step(task.machine, code.code);
        return step != nullptr && !step->needs.empty();
    });
}

// Nearly due, or nobody knows: worth doing while it lies open.
bool isWorthwhile(const DueLine& line) {
    return line.standing.kind != outlook::StandingKind::InHand || line.countdown.used >= 0.75;
}

std::vector<const DueLine*> alsoOpen(const Book& book, MachineId machine, const weekend::Plan& plan) {
    const std::set<std::string> opened(plan.opened.begin(), plan.opened.end());
    std::vector<const DueLine*> result;
    for (const DueLine& line : book.due(machine)) {
        const auto isOff = [&](const base::Code& step) { return opened.contains(step.code); };
        const auto& steps = line.task->steps;
        if (!line.picked && isWorthwhile(line) && needsOpening(book, *line.task) &&
            std::all_of(steps.begin(), steps.end(), isOff))
            result.push_back(&line);
    }
    return result;
}

// What is sent out is away for about so long. From memory of the trade, no source.
constexpr int kDaysAtAWorkshop = 14;

// The event that the machine would miss with something of it at a workshop, or nullptr.
const outlook::Event* ridesBeforeItIsBack(const Book& book, MachineId machine, calendar::Date workOn) {
    const outlook::Event* soonest = nullptr;
    for (const outlook::Event& event : book.ledger().all<outlook::Event>()) {
        const bool isEntered =
            std::any_of(event.entries.begin(), event.entries.end(),
                        [machine](const outlook::Entry& entry) { return entry.machine == machine; });
        if (isEntered && !event.calledOff && event.first >= workOn &&
            event.first <= workOn.plusDays(kDaysAtAWorkshop) &&
            (soonest == nullptr || event.first < soonest->first))
            soonest = &event;
    }
    return soonest;
}

}  // namespace

KitState kitState(const Book& book, const upkeep::TaskVersion& task) {
    KitState state;
    for (const upkeep::KitLine& need : task.kit) {
        if (need.onlyIfNeeded)
            continue;
        const stock::OnHand* there = need.line ? book.onHand(*need.line) : nullptr;
        if (there == nullptr)
            ++state.untied;
        else if (there->usable < need.amount)
            state.missing.push_back({need.what, need.amount - there->usable, need.unit});
    }
    return state;
}

base::Result<weekend::Plan> planFor(const Book& book, MachineId machine,
                                    const std::vector<weekend::Job>& jobs) {
    const auto* window = book.nextWindow();
    const calendar::Date workOn = window != nullptr ? window->date : book.today();
    for (const weekend::Job& job : jobs)
        if (const auto* event = job.sendsOut ? ridesBeforeItIsBack(book, machine, workOn) : nullptr)
            return base::refuse(base::Fault::RidesSoon, "job", job.name, event->name);
    weekend::PlanTerms terms{.isElseWhole = isWholeAfter(book, machine, jobs)};
    terms.times.toCold = book.ledger().garage().cool;
    for (const fastening::JointVersion* joint : book.joints(machine))
        terms.joints.push_back({joint->code, joint->name, joint->held, fastening::cures(*joint)});
    return weekend::planWork(book.steps(machine), jobs, terms);
}

Evening eveningOf(const Book& book, std::optional<MachineId> only) {
    Evening evening;
    evening.window = book.nextWindow();
    for (const items::Machine* machine : book.machines()) {
        MachineWork work{.machine = machine->id, .jobs = book.pickedJobs(machine->id)};
        if (work.jobs.empty())
            continue;
        work.plan = planFor(book, machine->id, work.jobs);
        if (only && *only != machine->id) {
            evening.elsewhere += work.plan ? work.plan->work + work.plan->waiting : units::Minutes{};
            continue;
        }
        if (work.plan) {
            evening.work += work.plan->work + work.plan->waiting;
            work.alsoOpen = alsoOpen(book, machine->id, *work.plan);
        }
        evening.machines.push_back(std::move(work));
    }
    std::stable_sort(
        evening.machines.begin(), evening.machines.end(),
        [](const MachineWork& a, const MachineWork& b) { return hasSafety(a) && !hasSafety(b); });
    if (evening.window != nullptr)
        evening.left = evening.window->endsAt - evening.window->startsAt - evening.work - evening.elsewhere;
    return evening;
}

}  // namespace wm::book
