// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>
#include <string_view>
#include <utility>

#include "core/base/result.h"
#include "core/calendar/date.h"

namespace wm::ui {

/// Which way a bare weekday or a date without a year points.
enum class Lean : std::uint8_t { Past, Future };

/// Reads a day as it is typed at the bench: "today" (or nothing more than "t"), "yesterday", "tomorrow", "-1"
/// and "+9" days from today, "sat" (the last one, today counted, or the next), "2026-05-03", "3.5.2026",
/// "3.5." and "3 may". Errors: Empty, NotADate.
base::Result<calendar::Date> parseDay(std::string_view field, const QString& typed, calendar::Date today,
                                      Lean lean);

/// "apr", "April 2025": the first and the last day of that month, not after today; without a year the last
/// one that has begun. Nothing if it is no month.
std::optional<std::pair<calendar::Date, calendar::Date>> parseMonth(const QString& typed,
                                                                    calendar::Date today);

}  // namespace wm::ui
