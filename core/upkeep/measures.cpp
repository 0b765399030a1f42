// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/upkeep/measures.h"

#include <algorithm>
#include <tuple>
#include <vector>

namespace wm::upkeep {

const MeasurePoint* pointNamed(const TaskVersion& task, std::string_view name) {
    const auto at = std::find_if(task.measures.begin(), task.measures.end(),
                                 [name](const MeasurePoint& point) { return point.name == name; });
    return at == task.measures.end() ? nullptr : &*at;
}

bool isOutside(const MeasurePoint& point, const units::Decimal& value) {
    return (point.least && value < *point.least) || (point.most && value > *point.most);
}

std::optional<units::Decimal> limitReached(const MeasurePoint& point, const units::Decimal& value) {
    if (point.least && (point.leastGood ? value < *point.least : value <= *point.least))
        return point.least;
    if (point.most && (point.mostGood ? value > *point.most : value >= *point.most))
        return point.most;
    return std::nullopt;
}

std::string_view jobOf(const TaskVersion& task, const MeasurePoint& point) {
    return point.job.empty() ? task.code : point.job;
}

std::optional<ReachedValue> reachedValue(std::span<const MeasuredValue> values, const Record* last,
                                         calendar::Date on) {
    const auto when = [](const Record& record) { return std::tuple(momentOf(record), record.entered); };
    std::vector<const MeasuredValue*> newest;
    for (const MeasuredValue& each : values) {
        // What was measured in a unit that the task no longer uses can't be held against its limits.
        if (each.record->date > on || each.value->unit != each.point->unit)
            continue;
        const auto known = std::find_if(newest.begin(), newest.end(), [&](const MeasuredValue* other) {
            return other->point == each.point;
        });
        if (known == newest.end())
            newest.push_back(&each);
        else if (when(*(*known)->record) < when(*each.record))
            *known = &each;
    }
    std::optional<ReachedValue> reached;
    std::optional<calendar::Moment> first;
    for (const MeasuredValue* each : newest) {
        const auto limit = limitReached(*each->point, each->value->value);
        const bool isEnded = last != nullptr && last != each->record && !cameAfter(*each->record, *last);
        if (!limit || isEnded || (first && *first <= momentOf(*each->record)))
            continue;
        first = momentOf(*each->record);
        reached = ReachedValue{each->record->id,  each->record->date, each->value->name,
                               each->value->unit, each->value->value, *limit};
    }
    return reached;
}

}  // namespace wm::upkeep
