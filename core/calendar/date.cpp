// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/calendar/date.h"

#include <fmt/format.h>

#include <chrono>

#include "core/base/text.h"

namespace wm::calendar {

using base::Fault;
using base::refuse;

namespace {

constexpr int kFirstYear = 1900;
constexpr int kLastYear = 2199;

std::chrono::year_month_day civil(Date date) {
    return std::chrono::sys_days{std::chrono::days{date.daysSinceEpoch()}};
}

Date fromCivil(std::chrono::year_month_day day) {
    return Date{static_cast<std::int32_t>(std::chrono::sys_days{day}.time_since_epoch().count())};
}

}  // namespace

int Date::year() const {
    return static_cast<int>(civil(*this).year());
}
int Date::month() const {
    return static_cast<int>(static_cast<unsigned>(civil(*this).month()));
}
int Date::day() const {
    return static_cast<int>(static_cast<unsigned>(civil(*this).day()));
}

int Date::isoWeekday() const {
    return static_cast<int>(std::chrono::weekday{std::chrono::sys_days{civil(*this)}}.iso_encoding());
}

std::string Date::iso() const {
    return fmt::format("{:04}-{:02}-{:02}", year(), month(), day());
}

Date Date::plusMonths(int months) const {
    const std::chrono::year_month_day start = civil(*this);
    const std::chrono::year_month target =
        std::chrono::year_month{start.year(), start.month()} + std::chrono::months{months};
    const std::chrono::year_month_day same{target.year(), target.month(), start.day()};
    if (same.ok())
        return fromCivil(same);
    const std::chrono::year_month_day_last last{target.year(), std::chrono::month_day_last{target.month()}};
    return fromCivil(std::chrono::year_month_day{last});
}

IsoWeek isoWeek(Date date) {
    const Date thursday = date.plusDays(4 - date.isoWeekday());
    const Date firstOfYear = *makeDate(thursday.year(), 1, 1);
    return IsoWeek{thursday.year(), (thursday - firstOfYear) / 7 + 1};
}

base::Result<Date> makeDate(int year, int month, int day) {
    const std::chrono::year_month_day candidate{std::chrono::year{year},
                                                std::chrono::month{static_cast<unsigned>(month)},
                                                std::chrono::day{static_cast<unsigned>(day)}};
    if (!candidate.ok() || year < kFirstYear || year > kLastYear)
        return refuse(Fault::NotADate, "date", fmt::format("{}-{}-{}", year, month, day));
    return fromCivil(candidate);
}

base::Result<Date> parseDate(std::string_view field, std::string_view text) {
    const std::string_view given = base::trimmed(text);
    if (given.empty())
        return refuse(Fault::Empty, std::string(field));
    const auto number = [&](std::size_t from, std::size_t count) {
        int value = 0;
        for (std::size_t i = from; i < from + count; ++i) {
            if (given[i] < '0' || given[i] > '9')
                return -1;
            value = value * 10 + (given[i] - '0');
        }
        return value;
    };
    const bool shaped = given.size() == 10 && given[4] == '-' && given[7] == '-' && number(0, 4) >= 0 &&
                        number(5, 2) >= 0 && number(8, 2) >= 0;
    // Other programs write "never" so; it is a day of the calendar, and none that is meant.
    const int year = shaped ? number(0, 4) : kFirstYear;
    if (year < kFirstYear || year > kLastYear)
        return refuse(Fault::Malformed, std::string(field), std::string(text),
                      fmt::format("a day from {} to {}", kFirstYear, kLastYear));
    const auto date =
        shaped ? makeDate(number(0, 4), number(5, 2), number(8, 2)) : refuse(Fault::NotADate, "date");
    if (!date)
        return refuse(Fault::NotADate, std::string(field), std::string(text), "2026-05-16");
    return date;
}

}  // namespace wm::calendar
