// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/hand_tight.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace wm::fastening {

namespace {

auto orderOf(const JointMark& mark) {
    return std::tuple(mark.date, mark.entered, mark.id);
}

}  // namespace

std::vector<HandTight> handTight(std::span<const JointMark> marks, calendar::Date on) {
    std::vector<const JointMark*> sorted;
    for (const JointMark& mark : marks)
        if (mark.date <= on && mark.kind != MarkKind::FoundFine && mark.kind != MarkKind::RiddenOpen)
            sorted.push_back(&mark);
    std::sort(sorted.begin(), sorted.end(),
              [](const JointMark* a, const JointMark* b) { return orderOf(*a) < orderOf(*b); });
    // A joint is open since the first mark that opened it; a second loosening makes it no younger.
    std::map<JointId, const JointMark*> open;
    for (const JointMark* mark : sorted) {
        if (mark->kind == MarkKind::Confirmed)
            open.erase(mark->joint);
        else
            open.emplace(mark->joint, mark);
    }
    std::vector<const JointMark*> oldestFirst;
    for (const auto& [joint, mark] : open)
        oldestFirst.push_back(mark);
    std::sort(oldestFirst.begin(), oldestFirst.end(),
              [](const JointMark* a, const JointMark* b) { return orderOf(*a) < orderOf(*b); });
    std::vector<HandTight> result;
    for (const JointMark* mark : oldestFirst)
        result.push_back({mark->joint, mark->date, mark->kind, mark->record});
    return result;
}

}  // namespace wm::fastening
