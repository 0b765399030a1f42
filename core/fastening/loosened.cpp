// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/loosened.h"

#include <algorithm>
#include <boost/math/distributions/binomial.hpp>
#include <map>
#include <tuple>

namespace wm::fastening {

namespace {

constexpr double kOneInTwenty = 0.05;

bool isCheck(MarkKind kind) {
    return kind == MarkKind::FoundFine || kind == MarkKind::FoundMoved || kind == MarkKind::MarkBroken;
}

void take(Loosening& line, const JointMark& mark, const std::optional<calendar::Date>& tightSince,
          const RiddenBetween& ridden) {
    ++line.checks;
    if (tightSince)
        line.ridden += ridden(mark.joint, *tightSince, mark.date);
    if (mark.kind == MarkKind::FoundFine)
        return;
    ++line.moved;
    line.movedSince += tightSince ? 1 : 0;
    line.last = mark.date;
    line.degrees = std::max(line.degrees, mark.movedDegrees.value_or(0));
}

// The marks of one joint in order. One that is already known to have moved is not found moved again until it
// was tightened.
Loosening lineOf(std::vector<const JointMark*> marks, const RiddenBetween& ridden) {
    std::sort(marks.begin(), marks.end(), [](const JointMark* a, const JointMark* b) {
        return std::tie(a->date, a->entered, a->id) < std::tie(b->date, b->entered, b->id);
    });
    Loosening line{.joint = marks.front()->joint};
    std::optional<calendar::Date> tightSince;
    bool isOpen = false;
    for (const JointMark* mark : marks) {
        if (isCheck(mark->kind) && !isOpen)
            take(line, *mark, tightSince, ridden);
        if (mark->kind == MarkKind::Confirmed || (mark->kind == MarkKind::FoundFine && !isOpen)) {
            tightSince = mark->date;
            isOpen = false;
        } else if (mark->kind != MarkKind::RiddenOpen && mark->kind != MarkKind::FoundFine) {
            tightSince.reset();
            isOpen = true;
        }
    }
    return line;
}

}  // namespace

std::vector<Loosening> looseningsOf(std::span<const JointMark> marks, const RiddenBetween& ridden,
                                    calendar::Date on) {
    std::map<JointId, std::vector<const JointMark*>> byJoint;
    for (const JointMark& mark : marks)
        if (mark.date <= on)
            byJoint[mark.joint].push_back(&mark);
    std::vector<Loosening> lines;
    for (auto& [joint, own] : byJoint)
        if (Loosening line = lineOf(std::move(own), ridden); line.checks > 0)
            lines.push_back(line);
    const auto perHour = [](const Loosening& line) {
        return static_cast<double>(line.moved) /
               static_cast<double>(std::max<std::int64_t>(1, line.ridden.count()));
    };
    std::sort(lines.begin(), lines.end(), [&](const Loosening& a, const Loosening& b) {
        return std::tuple(-a.moved, -perHour(a), a.joint) < std::tuple(-b.moved, -perHour(b), b.joint);
    });
    return lines;
}

std::optional<double> chanceOfAsMany(std::int64_t moved, units::Hours ridden, std::int64_t othersMoved,
                                     units::Hours othersRidden) {
    if (ridden.count() <= 0 || othersRidden.count() <= 0)
        return std::nullopt;
    if (moved <= 0)
        return 1.0;
    const auto own = static_cast<double>(ridden.count());
    const auto all = own + static_cast<double>(othersRidden.count());
    const boost::math::binomial_distribution<double> shared(static_cast<double>(moved + othersMoved),
                                                            own / all);
    return boost::math::cdf(boost::math::complement(shared, static_cast<double>(moved - 1)));
}

std::optional<Comparison> comparedWithKind(const Loosening& line, std::span<const Loosening> lines,
                                           const std::function<JointKind(JointId)>& kindOf) {
    Comparison result{.moved = line.movedSince, .ridden = line.ridden, .compared = 0};
    for (const Loosening& other : lines) {
        if (other.ridden.count() > 0)
            ++result.compared;
        if (other.joint == line.joint || kindOf(other.joint) != kindOf(line.joint))
            continue;
        result.othersMoved += other.movedSince;
        result.othersRidden += other.ridden;
    }
    const auto chance = chanceOfAsMany(result.moved, result.ridden, result.othersMoved, result.othersRidden);
    if (!chance)
        return std::nullopt;
    result.chance = *chance;
    result.stands = line.movedSince >= 2 && *chance * static_cast<double>(result.compared) < kOneInTwenty;
    return result;
}

}  // namespace wm::fastening
