// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/upkeep/measures.h"

#include <algorithm>

namespace wm::upkeep {

const MeasurePoint* pointNamed(const TaskVersion& task, std::string_view name) {
    const auto at = std::find_if(task.measures.begin(), task.measures.end(),
                                 [name](const MeasurePoint& point) { return point.name == name; });
    return at == task.measures.end() ? nullptr : &*at;
}

bool isOutside(const MeasurePoint& point, const units::Decimal& value) {
    return (point.least && value < *point.least) || (point.most && value > *point.most);
}

}  // namespace wm::upkeep
