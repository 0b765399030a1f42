// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Measured values that make a job due. All figures are invented.
#include "core/upkeep/measures.h"
#include "core/upkeep/unknown.h"

#include <rapidcheck/gtest.h>

#include "tests/core/upkeep/one_task.h"

namespace wm::upkeep {
namespace {

using units::Decimal;

Decimal hundredths(std::int64_t value) {
    return Decimal{value, 2};
}

TEST(LimitReached, AtTheLimitItIsSaidWhetherTheValueIsStillGood) {
    const auto reached = [](bool isGood, std::int64_t value) {
        const MeasurePoint point{.name = "inlet right",
                                 .unit = "mm",
                                 .least = hundredths(9),
                                 .most = hundredths(15),
                                 .leastGood = isGood,
                                 .mostGood = isGood};
        const auto limit = limitReached(point, hundredths(value));
        return limit ? limit->text() : "good";
    };
    for (const bool isGood : {false, true}) {
        EXPECT_EQ(reached(isGood, 8), "0.09");
        EXPECT_EQ(reached(isGood, 10), "good");
        EXPECT_EQ(reached(isGood, 14), "good");
        EXPECT_EQ(reached(isGood, 16), "0.15");
    }
    EXPECT_EQ(reached(false, 9), "0.09");
    EXPECT_EQ(reached(false, 15), "0.15");
    EXPECT_EQ(reached(true, 9), "good");
    EXPECT_EQ(reached(true, 15), "good");
    EXPECT_FALSE(limitReached({.name = "slack", .unit = "mm"}, hundredths(9))) << "nobody typed a limit";
    // As printed or with fewer figures: the same value.
    EXPECT_TRUE(limitReached({.name = "pads", .unit = "mm", .least = Decimal{10, 1}}, Decimal{1, 0}));
}

class ValueTest : public OneTask {
  protected:
    void measure(std::string_view date, std::int64_t value, std::string_view unit = "mm") {
        auto& record = *measured_.emplace_back(
            std::make_unique<Record>(make.record(date, RecordKind::Done, "clearance")));
        record.measured = {{"inlet right", std::string(unit), hundredths(value)}};
    }
    [[nodiscard]] std::optional<ReachedValue> on(std::string_view date, const Record* last = nullptr) const {
        std::vector<MeasuredValue> values;
        for (const auto& record : measured_)
            values.push_back({&point_, record.get(), &record->measured.front()});
        return reachedValue(values, last, made::day(date));
    }

    MeasurePoint point_{.name = "inlet right", .unit = "mm", .least = hundredths(9), .job = "shims"};
    std::vector<std::unique_ptr<Record>> measured_;
};

TEST_F(ValueTest, AtItsLimitItMakesTheJobDueUntilThatIsRecorded) {
    measure("2026-05-01", 10);
    EXPECT_FALSE(on("2026-05-02"));
    measure("2026-05-03", 9);
    EXPECT_FALSE(on("2026-05-02")) << "not yet measured";
    const auto reached = on("2026-05-04");
    ASSERT_TRUE(reached);
    EXPECT_EQ(reached->name, "inlet right");
    EXPECT_EQ(reached->value.text(), "0.09");
    EXPECT_EQ(reached->limit.text(), "0.09");
    EXPECT_EQ(reached->date, made::day("2026-05-03"));
    const auto before = make.record("2026-05-02");
    EXPECT_TRUE(on("2026-05-04", &before)) << "the shims of the day before did not help";
    const auto sameEvening = make.record("2026-05-03");
    EXPECT_FALSE(on("2026-05-04", &sameEvening)) << "measured and shimmed in one evening, typed in any order";
    const auto after = make.record("2026-05-05");
    EXPECT_FALSE(on("2026-05-06", &after));
}

TEST_F(ValueTest, ALaterGoodValueEndsItAndOneOfAnotherUnitSaysNothing) {
    measure("2026-05-03", 8);
    measure("2026-05-04", 9, "thou");
    EXPECT_TRUE(on("2026-05-05"));
    measure("2026-05-06", 12);
    EXPECT_FALSE(on("2026-05-06"));
}

TEST_F(ValueTest, WhatAJobMeasuresOfItselfIsNotEndedByItself) {
    measure("2026-05-03", 8);
    EXPECT_TRUE(on("2026-05-03", measured_.front().get()));
    const auto again = make.record("2026-05-08");
    EXPECT_FALSE(on("2026-05-09", &again)) << "done again, and nothing found";
}

TEST_F(ValueTest, TheCountdownIsOverByAValueWhateverIsLeft) {
    ride("2026-02-01", "1");
    it.records = {make.record("2026-01-10")};
    it.versions = {made::task({made::every("75")})};
    measure("2026-02-02", 9);
    EXPECT_FALSE(it.on("2026-02-03").over);
    const MeasuredValue value{&point_, measured_.front().get(), &measured_.front()->measured.front()};
    it.values = {value};
    EXPECT_TRUE(it.on("2026-02-03").over);
    EXPECT_EQ(it.on("2026-02-03").value->value.text(), "0.09");
    EXPECT_EQ(it.on("2026-02-03").limits[0].left, 7400) << "its own round goes on";
}

TEST_F(ValueTest, ALookThatFoundItFineEndsNoValueAndBringsNoneBack) {
    it.versions = {made::task({made::every("75")}, Consequence::SafetyEvident)};
    it.versions[0].renews = false;
    ASSERT_TRUE(isALook(it.versions[0]));
    it.records = {make.record("2026-01-10")};
    measure("2026-02-02", 9);
    it.values = {{&point_, measured_.front().get(), &measured_.front()->measured.front()}};
    it.records.push_back(make.record("2026-02-03", RecordKind::LookedFine));
    EXPECT_TRUE(it.on("2026-02-04").over);
    it.records.push_back(make.record("2026-02-05"));
    EXPECT_FALSE(it.on("2026-02-05").over);
    it.records.push_back(make.record("2026-02-06", RecordKind::LookedFine));
    EXPECT_FALSE(it.on("2026-02-07").over);
}

// Day by day and the slow way: each day the notebook is read from its first page to that day, line by line.
RC_GTEST_FIXTURE_PROP(ValueTest, AgreesWithReadingTheNotebookDayByDay, ()) {
    struct Line {
        int day = 0;
        bool isJob = false;
        std::int64_t value = 0;
    };
    const auto lines = *rc::gen::container<std::vector<Line>>(
        rc::gen::build<Line>(rc::gen::set(&Line::day, rc::gen::inRange(0, 20)),
                             rc::gen::set(&Line::isJob, rc::gen::arbitrary<bool>()),
                             rc::gen::set(&Line::value, rc::gen::inRange<std::int64_t>(5, 15))));
    const auto dayOf = [](int day) { return made::day("2026-05-01").plusDays(day).iso(); };
    std::vector<Record> jobs;
    base::Entered told = 0;
    for (const Line& line : lines) {
        if (line.isJob)
            jobs.push_back(make.record(dayOf(line.day)));
        else
            measure(dayOf(line.day), line.value);
        (line.isJob ? jobs.back() : *measured_.back()).entered = ++told;
    }
    for (int today = 0; today < 20; ++today) {
        bool isDue = false;
        for (int day = 0; day <= today; ++day) {
            for (const Line& line : lines)
                if (line.day == day)
                    isDue = !line.isJob && line.value <= 9;
        }
        const Record* last = nullptr;
        for (const Record& job : jobs)
            if (job.date.iso() <= dayOf(today) && (last == nullptr || last->date <= job.date))
                last = &job;
        RC_ASSERT(on(dayOf(today), last).has_value() == isDue);
    }
}

}  // namespace
}  // namespace wm::upkeep
