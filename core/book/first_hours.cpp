// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/book/first_hours.h"

#include <algorithm>
#include <map>

#include "core/book/unrecorded.h"
#include "core/upkeep/unknown.h"

namespace wm::book {

namespace {

using units::Minutes;
using weekend::StepVersion;

// An opening that takes less than this to repeat is no reason to do a job an evening earlier.
constexpr Minutes kWorthSharing{10};

FirstStage stageWithin(std::int64_t hundredths) {
    return hundredths <= 500     ? FirstStage::By5
           : hundredths <= 1'000 ? FirstStage::By10
           : hundredths <= 2'000 ? FirstStage::By20
                                 : FirstStage::Later;
}

// What an hour counts at the most for a task, in thousandths.
std::int64_t hardestHour(const upkeep::TaskVersion& task) {
    std::int64_t most = 1'000;
    for (const usage::HourWeight& weight : task.weights)
        most = std::max(most, weight.permille);
    return most;
}

// What the worst past that the bracket allows leaves of a task that counts hours alone: never done, so that
// its run-in may hold, and every hour of it, and of those to come, the hardest there is.
std::optional<std::int64_t> leftAtWorst(const upkeep::TaskVersion& task, const usage::HoursBracket& life) {
    if (!life.high || task.limits.empty() || !upkeep::countsOnlyHours(task))
        return std::nullopt;
    const upkeep::Limit& limit = task.limits.front();  // there is one of each counter
    const std::int64_t amount = std::min(limit.every, limit.first.value_or(limit.every));
    return amount * 1'000 / hardestHour(task) - life.high->count();
}

// The shortest of its intervals of hours; none: what comes round by days or washes counts as the longest.
FirstStage stageOf(const upkeep::TaskVersion& task, const usage::HoursBracket& life) {
    if (outlook::isOfTheRound(task))
        return FirstStage::EachRide;
    if (const auto left = leftAtWorst(task, life); left && *left > 0)
        return stageWithin(*left);
    if (upkeep::isSafety(task.consequence))
        return FirstStage::AtOnce;
    if (task.limits.empty())
        return FirstStage::WithAJob;
    std::int64_t every = 2'000;
    for (const upkeep::Limit& limit : task.limits)
        if (limit.counter == upkeep::Counter::Hours)
            every = std::min(every, limit.every);
    return stageWithin(every);
}

// All that has to come off for a job; nothing where its steps can't be followed.
std::vector<const StepVersion*> openingOf(const Book& book, const upkeep::TaskVersion& task) {
    std::vector<std::string> codes;
    for (const base::Code& step : task.steps)
        codes.push_back(step.code);
    const auto steps = book.steps(task.machine);
    return weekend::opening(steps, codes).value_or(std::vector<const StepVersion*>{});
}

Minutes minutesOf(const std::vector<const StepVersion*>& steps) {
    Minutes all{};
    for (const StepVersion* step : steps)
        all += step->off + step->on;
    return all;
}

bool holds(const std::vector<const StepVersion*>& steps, const StepVersion* step) {
    return std::find(steps.begin(), steps.end(), step) != steps.end();
}

void add(FirstGroup& group, const DueLine* line, const std::vector<const StepVersion*>& opening) {
    group.jobs.push_back(line);
    group.alone += line->task->minutes + minutesOf(opening);
    group.work += line->task->minutes;
    for (const StepVersion* step : opening) {
        if (holds(group.opened, step))
            continue;
        group.opened.push_back(step);
        group.work += step->off + step->on;
    }
}

}  // namespace

std::vector<FirstGroup> firstHours(const Book& book, MachineId machine) {
    std::map<FirstStage, FirstGroup> groups;
    std::vector<const DueLine*> others;
    const auto stage = [&](const DueLine* line) {
        return stageOf(*line->task, (line->item ? book.life(*line->item) : book.life(machine)).hours);
    };
    for (const DueLine* line : unknownOf(book, machine))
        if (stage(line) == FirstStage::AtOnce)
            add(groups[FirstStage::AtOnce], line, openingOf(book, *line->task));
        else
            others.push_back(line);
    const auto open = groups[FirstStage::AtOnce].opened;
    for (const DueLine* line : others) {
        const FirstStage when = stage(line);
        auto opening = openingOf(book, *line->task);
        const bool isOpen = std::all_of(opening.begin(), opening.end(),
                                        [&](const StepVersion* step) { return holds(open, step); });
        const bool waits = when == FirstStage::By5 || when == FirstStage::By10 || when == FirstStage::By20;
        if (waits && isOpen && minutesOf(opening) >= kWorthSharing) {
            FirstGroup& group = groups[FirstStage::WhileOpen];
            group.alone += minutesOf(opening);
            add(group, line, {});
            continue;
        }
        add(groups[when], line, opening);
    }
    std::vector<FirstGroup> all;
    for (auto& [when, group] : groups) {
        group.stage = when;
        if (!group.jobs.empty())
            all.push_back(std::move(group));
    }
    return all;
}

}  // namespace wm::book
