// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/outlook/ahead.h"

namespace wm::outlook {

/// Nothing further off is said, but dates that are known.
inline constexpr std::int32_t kFarthest = 730;  // days

/// The number of a week from Monday to Sunday.
std::int32_t weekOf(calendar::Date date);
calendar::Date mondayOf(std::int32_t week);

/// The days from tomorrow up to some day, sorted by what is ridden on them. The days of a week with an event
/// are days of that event or nothing.
struct DaysAhead {
    int habit = 0;
    int practice = 0;
    int races = 0;
    friend bool operator==(const DaysAhead&, const DaysAhead&) = default;
};

/// For today (nothing yet), tomorrow ... up to `most` days ahead.
std::vector<DaysAhead> daysAhead(const Ahead& ahead, std::int32_t most);

}  // namespace wm::outlook
