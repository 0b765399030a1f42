// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/weekend/weekend_opening.h"

#include <algorithm>
#include <map>
#include <string>

#include "ui/drawing/mark_of.h"
#include "ui/words/figures.h"
#include "ui/words/standing_words.h"

namespace wm::ui {

namespace {

using Opened = std::vector<std::string>;

int placeOf(const Opened& opened, const std::string& code) {
    const auto at = std::find(opened.begin(), opened.end(), code);
    return at == opened.end() ? -1 : static_cast<int>(at - opened.begin());
}

// Of several codes, the one that comes off last: that is where the rest is out of the way too.
int lastPlace(const Opened& opened, const std::vector<std::string>& codes) {
    int last = -1;
    for (const std::string& code : codes)
        last = std::max(last, placeOf(opened, code));
    return last;
}

int parentOf(const Opened& opened, const weekend::StepVersion& step) {
    std::vector<std::string> needs;
    for (const weekend::Need& need : step.needs)
        if (need.applies)
            needs.push_back(need.code);
    return lastPlace(opened, needs);
}

struct Tree {
    const book::Book& book;
    const book::MachineWork& work;
    std::map<int, std::vector<int>> children;  // -1 = the machine itself
    std::map<int, std::vector<OpeningStep::Job>> jobs;
    std::map<int, std::vector<OpeningStep::Job>> alsoOpen;
};

MarkState markOfJob(const book::Book& book, const weekend::Job& job) {
    const auto* line = job.task ? book.dueLine(*job.task) : nullptr;
    return line == nullptr ? MarkState{.kind = MarkState::Kind::Overdue} : markOf(*line);
}

Tree treeOf(const book::Book& book, const book::MachineWork& work) {
    Tree tree{book, work, {}, {}, {}};
    const Opened& opened = work.plan->opened;
    for (int place = 0; place < static_cast<int>(opened.size()); ++place)
        if (const auto* step = book.step(work.machine, opened[static_cast<std::size_t>(place)]))
            tree.children[parentOf(opened, *step)].push_back(place);
    for (const weekend::Job& job : work.jobs)
        tree.jobs[lastPlace(opened, job.steps)].push_back({text(job.name), markOfJob(book, job)});
    for (const book::DueLine* line : work.alsoOpen) {
        std::vector<std::string> codes;
        for (const base::Code& code : line->task->steps)
            codes.push_back(code.code);
        tree.alsoOpen[lastPlace(opened, codes)].push_back({text(line->task->name), markOf(*line)});
    }
    return tree;
}

void append(const Tree& tree, int parent, int depth, std::vector<OpeningStep>& into) {
    const auto children = tree.children.find(parent);
    if (children == tree.children.end())
        return;
    for (const int place : children->second) {
        const auto* step =
            tree.book.step(tree.work.machine, tree.work.plan->opened[static_cast<std::size_t>(place)]);
        OpeningStep shown{.label = text(step->name),
                          .minutes = static_cast<int>((step->off + step->on).count()),
                          .depth = depth,
                          .open = false,
                          .jobs = {}};
        if (const auto jobs = tree.jobs.find(place); jobs != tree.jobs.end())
            shown.jobs = jobs->second;
        into.push_back(std::move(shown));
        if (const auto open = tree.alsoOpen.find(place); open != tree.alsoOpen.end())
            into.push_back(
                {.label = {}, .minutes = 0, .depth = depth + 1, .open = true, .jobs = open->second});
        append(tree, place, depth + 1, into);
    }
}

}  // namespace

std::vector<OpeningStep> openingOf(const book::Book& book, const book::Evening& evening) {
    std::vector<OpeningStep> steps;
    for (const book::MachineWork& work : evening.machines) {
        if (!work.plan)
            continue;
        const Tree tree = treeOf(book, work);
        int depth = 0;
        const auto outside = tree.jobs.find(-1);
        if (evening.machines.size() > 1 || outside != tree.jobs.end()) {
            const auto* machine = book.ledger().find<items::Machine>(work.machine);
            steps.push_back(
                {.label = machine == nullptr ? QString() : text(machine->name),
                 .minutes = static_cast<int>(work.plan->work.count()),
                 .depth = depth++,
                 .open = false,
                 .jobs = outside == tree.jobs.end() ? std::vector<OpeningStep::Job>{} : outside->second});
        }
        append(tree, -1, depth, steps);
    }
    return steps;
}

}  // namespace wm::ui
