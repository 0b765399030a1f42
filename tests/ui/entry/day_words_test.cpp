// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/day_words.h"

#include <gtest/gtest.h>

#include "tests/ui/garage.h"

namespace wm::ui {
namespace {

// A Thursday.
calendar::Date today() {
    return day("2026-05-07");
}

std::string read(const char* typed, Lean lean = Lean::Past) {
    const auto date = parseDay("date", QString::fromUtf8(typed), today(), lean);
    return date ? date->iso() : "refused";
}

TEST(DayWords, UnderstandsTheWordsOfTheBench) {
    EXPECT_EQ(read("today"), "2026-05-07");
    EXPECT_EQ(read(" T "), "2026-05-07");
    EXPECT_EQ(read("yesterday"), "2026-05-06");
    EXPECT_EQ(read("tomorrow"), "2026-05-08");
    EXPECT_EQ(read("-1"), "2026-05-06");
    EXPECT_EQ(read("- 10"), "2026-04-27");
    EXPECT_EQ(read("+9"), "2026-05-16");
}

TEST(DayWords, AWeekdayPointsTheWayItIsAskedFor) {
    EXPECT_EQ(read("sat"), "2026-05-02");
    EXPECT_EQ(read("Saturday", Lean::Future), "2026-05-09");
    EXPECT_EQ(read("thu"), "2026-05-07");
    EXPECT_EQ(read("thu", Lean::Future), "2026-05-07");
    EXPECT_EQ(read("fri"), "2026-05-01");
}

TEST(DayWords, ReadsWrittenDates) {
    EXPECT_EQ(read("2026-05-03"), "2026-05-03");
    EXPECT_EQ(read("3.5.2026"), "2026-05-03");
    EXPECT_EQ(read("3.5."), "2026-05-03");
    EXPECT_EQ(read("3 May"), "2026-05-03");
    EXPECT_EQ(read("3. may 2025"), "2025-05-03");
    EXPECT_EQ(read("29 feb 2024"), "2024-02-29");
}

TEST(DayWords, AMissingYearIsTheNearOne) {
    EXPECT_EQ(read("20.12."), "2025-12-20");
    EXPECT_EQ(read("20.12.", Lean::Future), "2026-12-20");
    EXPECT_EQ(read("10.1.", Lean::Future), "2026-01-10");
}

TEST(DayWords, RefusesWhatIsNoDay) {
    for (const char* typed : {"29.2.2026", "31.4.", "2026-13-01", "2026-02-30", "soon", "sa", "-99999",
                              "3.5.26", "1e3", "0.0.", "may", "2026-05-03 12:00", "ß", "--1"})
        EXPECT_EQ(read(typed), "refused") << typed;
    const auto blank = parseDay("date", QStringLiteral("  "), today(), Lean::Past);
    ASSERT_FALSE(blank.has_value());
    EXPECT_EQ(blank.error().fault, base::Fault::Empty);
    EXPECT_EQ(blank.error().field, "date");
    const auto wrong = parseDay("until", QStringLiteral("31.4."), today(), Lean::Future);
    ASSERT_FALSE(wrong.has_value());
    EXPECT_EQ(wrong.error().fault, base::Fault::NotADate);
    EXPECT_EQ(wrong.error().given, "31.4.");
}

TEST(DayWords, AMonthIsFromItsFirstDayToItsLastOrToday) {
    const auto month = [](const char* typed) {
        const auto days = parseMonth(QString::fromUtf8(typed), today());
        return days ? days->first.iso() + ".." + days->second.iso() : std::string("none");
    };
    EXPECT_EQ(month("apr"), "2026-04-01..2026-04-30");
    EXPECT_EQ(month("April"), "2026-04-01..2026-04-30");
    EXPECT_EQ(month("feb 2024"), "2024-02-01..2024-02-29");
    EXPECT_EQ(month("dec"), "2025-12-01..2025-12-31") << "the last one that has begun";
    EXPECT_EQ(month("may"), "2026-05-01.." + today().iso());
    for (const char* typed : {"", "ap", "spring", "3 may", "dec 2026", "april apr", "2026"})
        EXPECT_EQ(month(typed), "none") << typed;
}

}  // namespace
}  // namespace wm::ui
