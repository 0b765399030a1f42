// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <cstdint>
#include <optional>

#include "core/calendar/date.h"
#include "core/units/quantity.h"
#include "core/upkeep/countdown.h"
#include "core/upkeep/task.h"
#include "core/usage/exposure.h"

namespace wm::ui {

/// How figures and days read on the screen; the same everywhere.

/// '.' or ',', as the desktop has it. Both are understood wherever a number is typed.
char decimalMark();

/// "Sat 16 May", with the year when it isn't the year of `today`.
QString dayWords(calendar::Date day, calendar::Date today);
/// "today", "tomorrow", "in 9 days", "3 days ago".
QString awayWords(calendar::Date day, calendar::Date today);

/// "61.3 h"
QString hoursWords(units::Hours hours);
/// "61.3 h"; "80 h (60 to 120)"; "80 h (60 or more)" where nobody knows the high end.
QString hoursWords(const usage::HoursBracket& hours);
/// The best figure alone, with a tilde where it is not exact: "~80 h".
QString shortHoursWords(const usage::HoursBracket& hours);

/// An amount of a counter with its unit: "2.1 h", "3 washes", "1 wash", "12.5 km".
QString countWords(std::int64_t amount, upkeep::Counter counter);
/// "15 h (10 to 25)", "10 to 25 h", "10 h or more": of a bracket as much as anybody knows.
QString bracketWords(const upkeep::CountBracket& bracket, upkeep::Counter counter);
/// "starts": what a field or a choice of this counter is called.
QString counterWords(upkeep::Counter counter);
QString amountWords(std::int64_t amount, upkeep::Unit unit);
QString consequenceWords(upkeep::Consequence consequence);

inline QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

}  // namespace wm::ui
