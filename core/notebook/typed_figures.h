// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "core/calendar/date.h"
#include "core/units/quantity.h"

namespace wm::notebook {

/// How a day is written: 2026-03-07, 7.3.2026, 3/7/2026, or the number of days that spreadsheets count
/// (46088; day 1 is 1900-01-01, and a 29 February 1900 that never was is counted).
enum class DateForm : std::uint8_t { YearFirst, DayFirst, MonthFirst, Serial };

struct ReadDate {
    calendar::Date date{};
    DateForm form = DateForm::DayFirst;
    bool bothWays = false;   ///< day and month could change places
    bool yearAdded = false;  ///< the cell has none; `year` was put in
};

/// A day in any of the forms; `form` decides where day and month could change places, and `year` stands in
/// for one that was left out. A time of day behind it and a weekday before it are passed over; months may be
/// named in English, German, French, Italian or Spanish. Nothing if it is no day.
std::optional<ReadDate> readDate(std::string_view cell, DateForm form, std::optional<int> year = {});
bool looksLikeDate(std::string_view cell);  ///< in any form but the serial number
std::string dateText(calendar::Date date, DateForm form);

/// How hours were noted: 1,5 as a number; 1:30 or 1h30 as a clock; 90 min; "2 h" a number with its unit.
enum class HoursForm : std::uint8_t { Number, Clock, Minutes, WithUnit, About };

struct ReadHours {
    units::Hours hours{};
    HoursForm form = HoursForm::Number;
};

/// Hours in any of the forms; `decimal` is the mark that the notebook uses for parts of a number.
std::optional<ReadHours> readHours(std::string_view cell, char decimal);

/// A number with its mark; blanks, apostrophes and the other mark may part the thousands. Scaled to
/// `places` decimals, nothing if it has more that are not zero, or is none.
std::optional<std::int64_t> readNumber(std::string_view cell, char decimal, int places);
bool isPlainNumber(std::string_view cell);
std::string hoursIn(units::Hours hours, char decimal);

/// What a spreadsheet leaves where a formula was or failed: "=SUM(D2:D9)", "#REF!".
bool isFormula(std::string_view cell);

}  // namespace wm::notebook
