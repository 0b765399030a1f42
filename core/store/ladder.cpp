// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/ladder.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace wm::store {

namespace {

std::int32_t weekOf(calendar::Date day) {
    // Of every day of a week the number of its Monday.
    return day.daysSinceEpoch() - (day.isoWeekday() - 1);
}

std::int32_t monthOf(calendar::Date day) {
    return day.year() * 12 + day.month();
}

}  // namespace

bool writtenAfter(const LadderCopy& a, const LadderCopy& b) {
    return std::tuple(a.order, a.revision, a.day) > std::tuple(b.order, b.revision, b.day);
}

bool isCopyDue(const std::vector<LadderCopy>& newestFirst, std::int64_t revision, calendar::Date today) {
    if (newestFirst.empty())
        return true;
    const std::int64_t since = revision - newestFirst.front().revision;
    // Below zero: an earlier state was put in the file's place, and what stands now has no copy of its own.
    if (since < 0 || since >= kChangesBetweenCopies)
        return true;
    const auto recent =
        newestFirst.begin() + static_cast<std::ptrdiff_t>(std::min(newestFirst.size(), kNewestCopies));
    return std::none_of(newestFirst.begin(), recent,
                        [today](const LadderCopy& copy) { return copy.day == today; });
}

std::vector<bool> keptOnLadder(const std::vector<LadderCopy>& newestFirst) {
    std::vector<bool> kept;
    std::set<std::int32_t> weeks;
    std::set<std::int32_t> months;
    for (const LadderCopy& copy : newestFirst) {
        if (kept.size() < kNewestCopies)
            kept.push_back(true);
        else if (weeks.size() < kWeeklyCopies)
            kept.push_back(weeks.insert(weekOf(copy.day)).second);
        else
            kept.push_back(months.size() < kMonthlyCopies && months.insert(monthOf(copy.day)).second);
    }
    return kept;
}

}  // namespace wm::store
