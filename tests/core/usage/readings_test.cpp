// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "core/usage/meter_doubts.h"
#include "tests/core/made.h"

namespace wm::usage {
namespace {

using base::Error;
using base::Fault;
using made::Made;

class ReadingsTest : public testing::Test {
  protected:
    Made make;
    UseFacts facts;
    // 10.0 on the 1st, 20.0 on the 11th.
    void SetUp() override {
        facts.hourReadings = {make.reading("2026-05-01", "10"), make.reading("2026-05-11", "20")};
    }
    Error refusal(const HourReading& reading) {
        const auto result = checkReading(facts, reading);
        return result ? Error{Fault::NothingToDo, "accepted", {}, {}} : result.error();
    }
};

TEST_F(ReadingsTest, TakesWhatFollows) {
    EXPECT_TRUE(checkReading(facts, make.reading("2026-05-05", "15")));
    EXPECT_TRUE(checkReading(facts, make.reading("2026-05-20", "20")));
    EXPECT_TRUE(checkReading(facts, make.reading("2026-04-20", "10")));
    EXPECT_TRUE(checkReading({}, make.reading("2026-04-20", "10")));
    EXPECT_TRUE(checkReading(facts, facts.hourReadings[0])) << "a reading is not held against itself";
}

TEST_F(ReadingsTest, RefusesALowerFigureWithoutAWordWhy) {
    EXPECT_EQ(refusal(make.reading("2026-05-20", "19.9")),
              (Error{Fault::MeterRunsBack, "shown", "19.9", "20.0"}));
    EXPECT_TRUE(checkReading(facts, make.reading("2026-05-20", "0", MeterEvent::Reset)));
    EXPECT_TRUE(checkReading(facts, make.replaced("2026-05-20", "20", "0")));
    EXPECT_EQ(refusal(make.replaced("2026-05-20", "19", "0")),
              (Error{Fault::MeterRunsBack, "before", "19.0", "20.0"}));
}

TEST_F(ReadingsTest, RefusesAFigureAboveALaterOne) {
    EXPECT_EQ(refusal(make.reading("2026-05-05", "20.1")),
              (Error{Fault::OutOfOrder, "shown", "20.1", "20.0"}));
    EXPECT_EQ(refusal(make.reading("2026-04-05", "10.1")),
              (Error{Fault::OutOfOrder, "shown", "10.1", "10.0"}));
}

TEST_F(ReadingsTest, TakesReadingsDuringADayInAnyOrder) {
    const auto during = [&](std::string_view shown) {
        HourReading reading = make.reading("2026-05-05", shown);
        reading.part = calendar::DayPart::Riding;
        return reading;
    };
    facts.hourReadings.push_back(during("12"));
    EXPECT_TRUE(checkReading(facts, during("11")));
    EXPECT_TRUE(checkReading(facts, during("13")));
    EXPECT_EQ(refusal(during("9.9")).fault, Fault::MeterRunsBack);
    facts.hourReadings.push_back(during("11"));
    EXPECT_TRUE(comesBefore(facts.hourReadings[3], facts.hourReadings[2]));
    EXPECT_EQ(refusal(make.reading("2026-05-05", "11.9")).fault, Fault::MeterRunsBack)
        << "the evening's is last";
}

TEST_F(ReadingsTest, RefusesMoreThanADayHolds) {
    // From the evening of the 11th to that of the 12th: 24 h at the most.
    EXPECT_TRUE(checkReading(facts, make.reading("2026-05-12", "44")));
    EXPECT_EQ(refusal(make.reading("2026-05-12", "44.01")),
              (Error{Fault::MeterJumps, "shown", "44.01", "20.0"}));
    EXPECT_TRUE(checkReading(facts, make.reading("2026-05-11", "44"))) << "the same evening";
    facts.hourReadings[1].part = calendar::DayPart::BeforeRiding;
    EXPECT_TRUE(checkReading(facts, make.reading("2026-05-12", "68"))) << "a morning and two days' riding";
    EXPECT_EQ(refusal(make.reading("2026-05-12", "68.01")).fault, Fault::MeterJumps);
}

// 20 h and 20 h again: no step is too long, and the day is.
TEST_F(ReadingsTest, RefusesMoreThanADayHoldsByManySteps) {
    facts.hourReadings.push_back(make.reading("2026-05-12", "40"));
    EXPECT_TRUE(checkReading(facts, make.reading("2026-05-12", "44")));
    EXPECT_EQ(refusal(make.reading("2026-05-12", "60")), (Error{Fault::MeterJumps, "shown", "60.0", "20.0"}));
    EXPECT_TRUE(checkReading(facts, make.reading("2026-05-13", "60")));
    facts.hourReadings.push_back(make.reading("2026-05-12", "60"));
    const auto odd = oddReadings(facts.hourReadings);
    ASSERT_EQ(odd.size(), 1U);
    EXPECT_EQ(odd[0].error, (Error{Fault::MeterJumps, "shown", "60.0", "20.0"}));
}

TEST_F(ReadingsTest, RefusesNegativeFigures) {
    auto reading = make.reading("2026-05-20", "0");
    reading.shown = units::Hours{-100};
    EXPECT_EQ(refusal(reading), (Error{Fault::Negative, "shown", "-1.0", ""}));
    reading = make.replaced("2026-05-20", "21", "0");
    reading.before = units::Hours{-1};
    EXPECT_EQ(refusal(reading), (Error{Fault::Negative, "before", "-0.01", ""}));
}

TEST_F(ReadingsTest, ARollOverNeedsItsZero) {
    EXPECT_EQ(refusal(make.rolled("2026-05-20", "3", "")), (Error{Fault::Empty, "rolls_at", "", ""}));
    EXPECT_EQ(refusal(make.rolled("2026-05-20", "3", "3")),
              (Error{Fault::OutOfOrder, "rolls_at", "3.0", "3.0"}));
    EXPECT_EQ(refusal(make.rolled("2026-05-20", "3", "20")),
              (Error{Fault::OutOfOrder, "rolls_at", "20.0", "20.0"}));
    EXPECT_TRUE(checkReading(facts, make.rolled("2026-05-20", "3", "20.1")));
    EXPECT_EQ(refusal(make.rolled("2026-05-12", "3", "100")).fault, Fault::MeterJumps);
}

TEST_F(ReadingsTest, ADeadMeterThatMovesHasResumed) {
    facts.hourReadings[1].event = MeterEvent::Stopped;
    EXPECT_TRUE(checkReading(facts, make.reading("2026-05-20", "20")));
    EXPECT_EQ(refusal(make.reading("2026-05-20", "21")),
              (Error{Fault::Inconsistent, "event", "21.0", "20.0"}));
    EXPECT_TRUE(checkReading(facts, make.reading("2026-05-20", "21", MeterEvent::Resumed)));
    facts.hourReadings.push_back(make.reading("2026-05-14", "20", MeterEvent::Resumed));
    EXPECT_TRUE(checkReading(facts, make.reading("2026-05-20", "21")));
    EXPECT_EQ(refusal(make.reading("2026-05-10", "20", MeterEvent::Stopped)).fault, Fault::NothingToDo);
    facts.hourReadings[1].event = MeterEvent::Plain;
    EXPECT_EQ(refusal(make.reading("2026-05-10", "19", MeterEvent::Stopped)).fault, Fault::OutOfOrder);
}

TEST_F(ReadingsTest, AnOdometerIsCheckedTheSameWay) {
    facts.distanceReadings = {make.odometer("2026-05-01", "100")};
    EXPECT_TRUE(checkReading(facts, make.odometer("2026-05-02", "3700")));
    const auto jump = checkReading(facts, make.odometer("2026-05-02", "3700.1"));
    EXPECT_EQ(jump.error(), (Error{Fault::MeterJumps, "shown", "3700.1", "100"}));
    const auto back = checkReading(facts, make.odometer("2026-05-02", "99"));
    EXPECT_EQ(back.error(), (Error{Fault::MeterRunsBack, "shown", "99", "100"}));
}

// What a whole file brings in is held to the same rule as what is said.
TEST_F(ReadingsTest, NamesWhatNobodyCouldHaveSaid) {
    EXPECT_TRUE(oddReadings(facts.hourReadings).empty());
    facts.hourReadings.push_back(make.reading("2026-05-16", "7000"));
    facts.hourReadings.push_back(make.reading("2026-05-20", "31"));
    const auto odd = oddReadings(facts.hourReadings);
    ASSERT_EQ(odd.size(), 2U);
    EXPECT_EQ(odd[0].error, (Error{Fault::MeterJumps, "shown", "7000.0", "20.0"}));
    EXPECT_EQ(odd[0].reading, facts.hourReadings[2].id.value());
    EXPECT_EQ(odd[0].from, made::evening("2026-05-11"));
    EXPECT_FALSE(odd[0].isUnmetered);
    EXPECT_EQ(odd[1].error, (Error{Fault::MeterRunsBack, "shown", "31.0", "7000.0"}));
    EXPECT_TRUE(odd[1].isUnmetered);
    for (const OddReading& each : odd)
        for (const HourReading& reading : facts.hourReadings)
            if (reading.id.value() == each.reading) {
                EXPECT_FALSE(checkReading(facts, reading)) << "one rule";
            }
    EXPECT_EQ(oddReadings({make.odometer("2026-05-01", "100"), make.odometer("2026-05-02", "99")}).size(),
              1U);
}

TEST_F(ReadingsTest, AReadingThatWasExplainedIsNotOdd) {
    facts.hourReadings.push_back(make.replaced("2026-05-20", "21", "0"));
    facts.hourReadings.push_back(make.reading("2026-05-21", "2", MeterEvent::Stopped));
    facts.hourReadings.push_back(make.reading("2026-05-22", "2"));
    EXPECT_TRUE(oddReadings(facts.hourReadings).empty());
    facts.hourReadings.push_back(make.reading("2026-05-23", "3"));
    ASSERT_EQ(oddReadings(facts.hourReadings).size(), 1U) << "it moved on and nobody said that it does";
    EXPECT_TRUE(oddReadings(facts.hourReadings)[0].isUnmetered);
}

// Ten hours on the meter from the 1st to the 11th.
TEST_F(ReadingsTest, ThreeTimesWhatTheMeterRanIsStillANote) {
    facts.outings = {make.outing("2026-05-02", "10"), make.outing("2026-05-03", "20")};
    EXPECT_TRUE(whereItStood(facts).empty());
    facts.outings.push_back(make.outing("2026-05-04", "0.01"));
    ASSERT_EQ(whereItStood(facts).size(), 1U);
    EXPECT_EQ(whereItStood(facts)[0],
              (MeterStood{made::evening("2026-05-01"), made::evening("2026-05-11"),
                          facts.hourReadings[1].id.value(), made::hours("30.01"), made::hours("10")}));
}

TEST_F(ReadingsTest, AMeterThatDidNotMoveIsAskedAboutBeyondTheTolerance) {
    facts.hourReadings[0].shown = facts.hourReadings[1].shown = made::hours("10.1");
    facts.outings = {make.outing("2026-05-02", "0.1"), make.outing("2026-05-03")};
    EXPECT_TRUE(whereItStood(facts).empty()) << "0.1 h and 5 % are nothing to a meter of tenths";
    facts.outings[0].hours = made::hours("0.11");
    ASSERT_EQ(whereItStood(facts).size(), 1U);
    EXPECT_EQ(whereItStood(facts)[0].ran, made::hours("0"));
    facts.hourReadings[0].event = MeterEvent::Stopped;
    EXPECT_TRUE(whereItStood(facts).empty()) << "it is said";
    facts.hourReadings[0].event = MeterEvent::Plain;
    facts.hourReadings[1].event = MeterEvent::Reset;
    EXPECT_TRUE(whereItStood(facts).empty()) << "nobody knows what it ran";
}

TEST_F(ReadingsTest, AMeterOfWholeHoursHidesOneOfThem) {
    facts.hourReadings[1].shown = made::hours("10");
    facts.outings = {make.outing("2026-05-02", "1.15")};
    EXPECT_TRUE(whereItStood(facts).empty()) << "10.0 to 10.9 shows as 10";
    facts.outings[0].hours = made::hours("1.16");
    EXPECT_EQ(whereItStood(facts).size(), 1U);
}

// Two outings of a day with a reading between them: the first reading closes none of the two.
TEST_F(ReadingsTest, AReadingBetweenTwoOutingsOfADayPartsNothing) {
    auto between = make.reading("2026-05-20", "20.5");
    between.part = calendar::DayPart::Riding;
    facts.hourReadings.push_back(between);
    facts.hourReadings.push_back(make.reading("2026-05-20", "24.5"));
    facts.outings = {make.outing("2026-05-20", "0.5"), make.outing("2026-05-20", "4")};
    EXPECT_TRUE(whereItStood(facts).empty());
    facts.outings.push_back(make.outing("2026-05-20", "12"));
    EXPECT_EQ(whereItStood(facts).size(), 1U) << "16.5 noted, 4.5 ran";
    facts.hourReadings.pop_back();
    EXPECT_TRUE(whereItStood(facts).empty()) << "nobody knows what came after the last reading";
}

}  // namespace
}  // namespace wm::usage
