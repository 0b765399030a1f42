// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/book/due_change.h"

#include <algorithm>
#include <utility>

namespace wm::book {

using outlook::StandingKind;

namespace {

const DueLine* lineOf(const std::vector<DueLine>& lines, TaskId task) {
    const auto found = std::find_if(lines.begin(), lines.end(),
                                    [task](const DueLine& line) { return line.task->task == task; });
    return found == lines.end() ? nullptr : &*found;
}

std::optional<EventId> fallsDueBefore(const outlook::Standing& standing) {
    if (standing.kind != StandingKind::BeforeEvent || !standing.event)
        return std::nullopt;
    return standing.event->id;
}

struct Left {
    upkeep::Counter counter = upkeep::Counter::Hours;
    std::int64_t left = 0;
    std::optional<calendar::Date> dueOn{};
    bool unbounded = false;
    friend bool operator==(const Left&, const Left&) = default;
};

std::optional<Left> leftOf(const upkeep::Countdown& countdown) {
    if (!countdown.governing)
        return std::nullopt;
    const upkeep::LimitState& state = countdown.limits[*countdown.governing];
    return Left{state.limit.counter, state.left, state.dueOn, state.unbounded};
}

}  // namespace

bool readsOtherwise(const DueLine& before, const DueLine& after) {
    const auto& was = before.countdown;
    const auto& is = after.countdown;
    return before.standing.kind != after.standing.kind ||
           fallsDueBefore(before.standing) != fallsDueBefore(after.standing) ||
           before.standing.likely != after.standing.likely || leftOf(was) != leftOf(is) ||
           was.noRecord != is.noRecord || was.over != is.over || was.triggered != is.triggered ||
           was.triggeredOn != is.triggeredOn || was.value != is.value ||
           before.task->consequence != after.task->consequence;
}

std::vector<DueMove> dueChange(const Book& before, const Book& after, MachineId machine) {
    std::vector<DueMove> moves;
    const auto& was = before.due(machine);
    const auto& is = after.due(machine);
    for (const DueLine& line : was) {
        const DueLine* now = lineOf(is, line.task->task);
        if (now == nullptr)
            moves.push_back({.before = line});
        else if (readsOtherwise(line, *now))
            moves.push_back({.before = line, .after = *now});
    }
    for (const DueLine& line : is)
        if (lineOf(was, line.task->task) == nullptr)
            moves.push_back({.after = line});
    return moves;
}

}  // namespace wm::book
