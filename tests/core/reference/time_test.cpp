// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Meters, intervals and the calendar against tests/reference/time.json. Each case carries its source: exact
// decimal arithmetic (checked with bc), ISO 8601, the Gregorian calendar (checked with GNU date and C++20
// <chrono>).
#include <gtest/gtest.h>

#include <cmath>

#include "core/outlook/ahead.h"
#include "core/picture/shape.h"
#include "tests/core/made.h"
#include "tests/core/reference/cases.h"

namespace wm::reference {
namespace {

using calendar::Date;
using made::day;
using made::hours;
using nlohmann::json;

std::string word(const json& object, const char* key) {
    return object.at(key).get<std::string>();
}

class MeterReference : public testing::TestWithParam<const char*> {};

// One reading a day from 2000-01-01 on; the engine hours at the first reading are the machine's stated past.
TEST_P(MeterReference, TotalsAreExact) {
    const json one = caseOf("time", GetParam());
    SCOPED_TRACE(word(one, "source"));
    made::Made make;
    usage::UseFacts facts;
    Date on = day("2000-01-01");
    for (const json& entry : one.at("input").at("log")) {
        const std::string kind = word(entry, "kind");
        const auto reading =
            kind == "replaced"   ? make.replaced(on.iso(), word(entry, "old_value"), word(entry, "new_value"))
            : kind == "rollover" ? make.rolled(on.iso(), word(entry, "value"), word(entry, "rollover_at"))
                                 : make.reading(on.iso(), word(entry, "value"));
        EXPECT_TRUE(usage::checkReading(facts, reading));
        facts.hourReadings.push_back(reading);
        on = on.plusDays(1);
    }
    const std::string past = word(one.at("input"), "engine_hours_at_first");
    const auto machine = made::usedMachine("2000-01-01", past, past, past);
    const auto atoms = items::withPast(machine, usage::atomsOf(facts));
    on = day("2000-01-01");
    for (const json& total : one.at("expected").at("total_after_each")) {
        EXPECT_EQ(usage::exposure(atoms, std::nullopt, {on, calendar::DayPart::AfterRiding}).hours,
                  usage::HoursBracket::exactly(hours(total.get<std::string>())))
            << on.iso();
        on = on.plusDays(1);
    }
}

INSTANTIATE_TEST_SUITE_P(Cases, MeterReference, testing::Values("K01", "K02", "K03", "K06", "K07", "K08"));

TEST(MeterRefusalReference, ALowerReadingNeedsAReason) {
    const json one = caseOf("time", "K09");
    made::Made make;
    const json& log = one.at("input").at("log");
    usage::UseFacts facts;
    facts.hourReadings = {make.reading("2026-05-01", word(log[0], "value"))};
    const auto answer = usage::checkReading(facts, make.reading("2026-05-02", word(log[1], "value")));
    ASSERT_TRUE(one.at("expected").at("must_refuse"));
    EXPECT_EQ(answer.error().fault, base::Fault::MeterRunsBack);
}

TEST(MeterRefusalReference, MetersDoNotShowNegativeHours) {
    const json one = caseOf("time", "K11");
    ASSERT_TRUE(one.at("expected").at("must_refuse"));
    const auto shown = units::parseHours("shown", word(one.at("input").at("log")[0], "value"));
    EXPECT_EQ(shown.error().fault, base::Fault::Negative);
}

TEST(CalendarReference, MonthsClampToTheMonthEnd) {
    const json one = caseOf("time", "K13");
    const json& pairs = one.at("input").at("pairs");
    for (std::size_t i = 0; i < pairs.size(); ++i)
        EXPECT_EQ(day(word(pairs[i], "date")).plusMonths(pairs[i].at("months")).iso(),
                  one.at("expected").at("results")[i].get<std::string>());
}

TEST(CalendarReference, IsoWeeks) {
    const json one = caseOf("time", "K15");
    const json& dates = one.at("input").at("dates");
    for (std::size_t i = 0; i < dates.size(); ++i) {
        const Date date = day(dates[i].get<std::string>());
        const auto week = calendar::isoWeek(date);
        const std::string text = std::to_string(week.year) + "-W" + (week.week < 10 ? "0" : "") +
                                 std::to_string(week.week) + "-" + std::to_string(date.isoWeekday());
        EXPECT_EQ(text, one.at("expected").at("iso_week")[i].get<std::string>());
    }
}

TEST(CalendarReference, DaysBetweenDates) {
    const json one = caseOf("time", "K17");
    const json& pairs = one.at("input").at("pairs");
    for (std::size_t i = 0; i < pairs.size(); ++i)
        EXPECT_EQ(day(word(pairs[i], "to")) - day(word(pairs[i], "from")),
                  one.at("expected").at("days")[i].get<int>());
}

TEST(CalendarReference, LeapYears) {
    const json one = caseOf("time", "K19");
    const json& years = one.at("input").at("years");
    for (std::size_t i = 0; i < years.size(); ++i) {
        const int year = years[i];
        if (year > 2199)
            continue;  // beyond the calendar of this program, and refused
        EXPECT_EQ(calendar::makeDate(year, 2, 29).has_value(), one.at("expected").at("leap")[i].get<bool>())
            << year;
    }
    EXPECT_FALSE(calendar::makeDate(2400, 2, 29));
}

TEST(CalendarReference, DatesThatDoNotExist) {
    const json one = caseOf("time", "K21");
    ASSERT_TRUE(one.at("expected").at("must_refuse_each"));
    for (const json& date : one.at("input").at("dates"))
        EXPECT_EQ(calendar::parseDate("date", date.get<std::string>()).error().fault, base::Fault::NotADate);
}

class IntervalReference : public testing::TestWithParam<const char*> {
  protected:
    // Ridden to `last_hours` on the day of the last time, to `now_hours` on the day itself.
    static upkeep::Countdown reckon(const json& input, Date today) {
        made::Made make;
        made::Case it;
        const std::string last = input.value("last_date", "2023-06-01");
        it.since = day("2020-01-01");
        usage::UseFacts use;
        use.outings = {make.outing(last, word(input, "last_hours")), make.outing(today.iso(), "0")};
        use.outings[1].hours = hours(word(input, "now_hours")) - hours(word(input, "last_hours"));
        it.atoms = usage::atomsOf(use);
        it.versions = {made::task({made::every(word(input, "interval_hours"))})};
        if (input.contains("interval_months"))
            it.versions[0].limits.push_back(
                made::every(input.at("interval_months").get<std::int64_t>(), upkeep::Counter::Months));
        if (input.at("mode") == "fixed")
            it.versions[0].countFrom = upkeep::CountFrom::FixedMarks;
        it.records = {make.record(last)};
        return it.on(today.iso());
    }
};

std::int64_t signedHours(const std::string& text) {
    return units::parseDecimal("hours", text)->scaledTo(2);
}

TEST_P(IntervalReference, StandsWhereTheReferenceSays) {
    const json one = caseOf("time", GetParam());
    SCOPED_TRACE(word(one, "source"));
    const json& input = one.at("input");
    const json& expected = one.at("expected");
    const Date today = day(input.value("today", "2023-08-01"));
    const upkeep::Countdown down = reckon(input, today);
    const upkeep::LimitState& byHours = down.limits.at(0);
    EXPECT_EQ(byHours.left, signedHours(word(expected, "remaining_hours")));
    EXPECT_EQ(signedHours(word(input, "last_hours")) + byHours.amount,
              signedHours(word(expected, "due_hours")));
    EXPECT_EQ(down.over, expected.at("is_due").get<bool>());
    if (expected.contains("used_fraction")) {
        EXPECT_NEAR(byHours.used, expected.at("used_fraction").get<double>(), 1e-12);
    }
    if (expected.contains("due_date")) {
        EXPECT_EQ(down.limits.at(1).dueOn, day(word(expected, "due_date")));
        EXPECT_EQ(down.limits.at(1).left, expected.at("remaining_days").get<int>());
    }
    if (expected.contains("days_until_hours_due")) {
        // 2.3 h left at 1.6 h a week: used up in the mean after so many days.
        outlook::Ahead ahead;
        ahead.today = today;
        ahead.habitOutingsPerWeek = units::parseDecimal("h", word(input, "hours_per_week"))->toDouble();
        ahead.practiceHours.mean = 1;
        const double days = expected.at("days_until_hours_due");
        EXPECT_NEAR(outlook::meanUse(ahead, upkeep::Counter::Hours, today.plusDays(7)) / 7 * days,
                    static_cast<double>(byHours.left), 1e-9);
    }
}

INSTANTIATE_TEST_SUITE_P(Cases, IntervalReference, testing::Values("K23", "K24", "K26", "K28", "K29"));

TEST(IntervalRefusalReference, AnIntervalMustBeAboveZero) {
    const json one = caseOf("time", "K31");
    ASSERT_TRUE(one.at("expected").at("must_refuse"));
    auto task = made::task({made::every(word(one.at("input"), "interval_hours"))});
    task.name = "oil";
    picture::Checks check;
    picture::checkShape(check, task);
    ASSERT_TRUE(check.failed());
    EXPECT_EQ(check.refusal().value().fault, base::Fault::NotPositive);
    EXPECT_EQ(check.refusal().value().field, "limits[0].every");
}

}  // namespace
}  // namespace wm::reference
