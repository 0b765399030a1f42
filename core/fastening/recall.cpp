// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/recall.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace wm::fastening {

namespace {

auto stampOf(const auto& fact) {
    return std::tuple(fact.date, fact.entered);
}

bool changesTightness(const JointMark& mark) {
    return mark.kind == MarkKind::Confirmed || mark.kind == MarkKind::Loosened;
}

// Checks are of the evening, in their order of entry.
bool isBefore(const Calibration& check, const Touch& tightened) {
    return comesBefore({.when = {check.date, calendar::DayPart::AfterRiding}, .entered = check.entered},
                       tightened);
}

Recall recallOf(const Calibration& failed, const Calibration* good, bool isInUse,
                std::span<const JointMark> marks, calendar::Date on) {
    Recall recall{.failed = &failed, .lastGood = good};
    std::map<JointId, RecallLine> lines;
    const auto inPeriod = [&](const JointMark& mark) {
        return mark.tool == failed.tool && mark.kind == MarkKind::Confirmed && mark.date <= on &&
               (isInUse || stampOf(mark) < stampOf(failed)) &&
               (good == nullptr || stampOf(*good) < stampOf(mark));
    };
    for (const JointMark& mark : marks) {
        if (!inPeriod(mark))
            continue;
        RecallLine& line = lines[mark.joint];
        ++line.times;
        if (line.tightened == nullptr || stampOf(*line.tightened) < stampOf(mark))
            line.tightened = &mark;
    }
    for (const JointMark& mark : marks) {
        const auto line = lines.find(mark.joint);
        if (line == lines.end() || !changesTightness(mark) || mark.date > on ||
            stampOf(mark) <= stampOf(*line->second.tightened))
            continue;
        const JointMark*& since = line->second.since;
        if (since == nullptr || stampOf(*since) < stampOf(mark))
            since = &mark;
    }
    for (const auto& [joint, line] : lines)
        recall.lines.push_back(line);
    std::sort(recall.lines.begin(), recall.lines.end(), [](const RecallLine& a, const RecallLine& b) {
        return stampOf(*b.tightened) < stampOf(*a.tightened);
    });
    return recall;
}

}  // namespace

std::vector<Recall> recallsOf(ToolId tool, std::span<const Calibration> calibrations,
                              std::span<const JointMark> marks, calendar::Date on) {
    std::vector<const Calibration*> own;
    for (const Calibration& each : calibrations)
        if (each.tool == tool && each.date <= on)
            own.push_back(&each);
    std::sort(own.begin(), own.end(),
              [](const Calibration* a, const Calibration* b) { return stampOf(*a) < stampOf(*b); });
    std::vector<Recall> recalls;
    const Calibration* good = nullptr;
    for (const Calibration* each : own) {
        if (!each->foundWithin)
            recalls.push_back(recallOf(*each, good, each == own.back() && !each->leftWithin, marks, on));
        if (each->leftWithin)
            good = each;
    }
    std::reverse(recalls.begin(), recalls.end());
    return recalls;
}

const Calibration* doubtedBy(const Touch& tightened, std::span<const Calibration> calibrations,
                             calendar::Date on) {
    const Calibration* before = nullptr;
    const Calibration* next = nullptr;
    for (const Calibration& check : calibrations) {
        if (check.tool != tightened.tool || check.date > on)
            continue;
        if (isBefore(check, tightened)) {
            if (before == nullptr || stampOf(*before) < stampOf(check))
                before = &check;
        } else if (next == nullptr || stampOf(check) < stampOf(*next)) {
            next = &check;
        }
    }
    if (next != nullptr)
        return next->foundWithin ? nullptr : next;
    return before == nullptr || before->leftWithin ? nullptr : before;
}

bool isVouched(const Touch& tightened, std::span<const Calibration> calibrations, calendar::Date on) {
    const Calibration* before = nullptr;
    for (const Calibration& check : calibrations)
        if (check.tool == tightened.tool && isBefore(check, tightened) &&
            (before == nullptr || stampOf(*before) < stampOf(check)))
            before = &check;
    return tightened.tool && before != nullptr && before->leftWithin &&
           doubtedBy(tightened, calibrations, on) == nullptr;
}

const JointMark* lastTightened(std::span<const JointMark> marks, JointId joint, calendar::Date on) {
    const JointMark* last = nullptr;
    for (const JointMark& mark : marks)
        if (mark.joint == joint && mark.kind == MarkKind::Confirmed && mark.date <= on &&
            (last == nullptr || stampOf(*last) < stampOf(mark)))
            last = &mark;
    return last;
}

}  // namespace wm::fastening
