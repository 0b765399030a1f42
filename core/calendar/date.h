// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace wm::calendar {

/// A civil date of the Gregorian calendar. No time of day, no time zone: a day at the track is a day,
/// wherever it is. Between 1900-01-01 and 2199-12-31.
class Date {
  public:
    constexpr Date() = default;  ///< 1970-01-01: a place for a reader to fill
    /// 1970-01-01 plus `days`. Use makeDate or parseDate for what comes from outside.
    explicit constexpr Date(std::int32_t daysSinceEpoch) : days_(daysSinceEpoch) {}
    [[nodiscard]] constexpr std::int32_t daysSinceEpoch() const { return days_; }

    [[nodiscard]] int year() const;
    [[nodiscard]] int month() const;        ///< 1 to 12
    [[nodiscard]] int day() const;          ///< 1 to 31
    [[nodiscard]] int isoWeekday() const;   ///< 1 = Monday to 7 = Sunday
    [[nodiscard]] std::string iso() const;  ///< "2026-05-16"

    [[nodiscard]] constexpr Date plusDays(std::int32_t days) const { return Date{days_ + days}; }
    /// The same day of the month, or the last day of a month that is shorter: 31 Jan + 1 month = 28 or 29
    /// Feb.
    [[nodiscard]] Date plusMonths(int months) const;

    friend constexpr auto operator<=>(Date, Date) = default;
    /// Whole days from `b` to `a`.
    friend constexpr std::int32_t operator-(Date a, Date b) { return a.days_ - b.days_; }

  private:
    std::int32_t days_ = 0;
};

struct IsoWeek {
    int year;
    int week;  ///< 1 to 53; week 1 holds the year's first Thursday (ISO 8601)
    friend auto operator<=>(const IsoWeek&, const IsoWeek&) = default;
};

IsoWeek isoWeek(Date date);

/// Errors: NotADate if there is no such day (29 February 2023) or the year is out of range.
base::Result<Date> makeDate(int year, int month, int day);
/// "2026-05-16" only. Errors: Empty, NotADate, Malformed (the year is out of range).
base::Result<Date> parseDate(std::string_view field, std::string_view text);

/// Before the day's riding, the riding itself, or after it: what decides whether a wheel that was swapped on
/// a race day carries that day.
enum class DayPart : std::uint8_t { BeforeRiding, Riding, AfterRiding };

struct Moment {
    Date date;
    DayPart part = DayPart::AfterRiding;
    friend auto operator<=>(const Moment&, const Moment&) = default;
};

}  // namespace wm::calendar
