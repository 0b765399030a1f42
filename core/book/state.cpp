// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/state.h"

#include <algorithm>
#include <set>

#include "core/items/positions.h"

namespace wm::book {

using calendar::Moment;

namespace {

std::string noteOf(const Book& book, std::int64_t move) {
    const auto* found = book.ledger().find<items::Move>(MoveId{move});
    return found == nullptr ? std::string{} : found->note;
}

std::vector<Gap> gapsAt(const Book& book, MachineId machine, Moment when) {
    std::vector<Gap> gaps;
    for (const auto& left : book.fittings().emptied(machine, when)) {
        const auto need = items::needOf(left.position);
        if (need == items::Need::MayBeOff)
            continue;
        Gap gap{.position = left.position, .item = left.item, .since = left.since.date};
        gap.isDoubtful = need == items::Need::Unknown;
        const auto place = book.fittings().placeOf(left.item, when);
        gap.isAway = place && place->kind == items::MoveKind::Away;
        if (gap.isAway)
            gap.where = noteOf(book, place->move);
        gaps.push_back(std::move(gap));
    }
    return gaps;
}

}  // namespace

std::vector<Gap> gapsOn(const Book& book, MachineId machine, calendar::Date day) {
    return gapsAt(book, machine, {day, calendar::DayPart::Riding});
}

State stateOf(const Book& book, MachineId machine) {
    return {gapsAt(book, machine, {book.today(), calendar::DayPart::AfterRiding}), book.handTight(machine)};
}

bool isWholeAfter(const Book& book, MachineId machine, const std::vector<weekend::Job>& jobs) {
    const State state = stateOf(book, machine);
    if (state.isWhole() || !state.gaps.empty())
        return state.isWhole();
    std::set<JointId> torqued;
    for (const weekend::Job& job : jobs) {
        const auto* task = job.task ? book.task(*job.task) : nullptr;
        const auto steps = weekend::opening(book.steps(machine), job.steps);
        if (task == nullptr || !steps)
            continue;
        std::vector<std::string> codes;
        for (const weekend::StepVersion* step : *steps)
            codes.push_back(step->code);
        for (const auto* joint : book.jointsOpened(*task, codes))
            torqued.insert(joint->joint);
    }
    return std::all_of(state.handTight.begin(), state.handTight.end(),
                       [&](const OpenJoint& open) { return torqued.contains(open.joint->joint); });
}

}  // namespace wm::book
