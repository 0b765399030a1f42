// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/fields/draft.h"

#include <gtest/gtest.h>

#include "tests/ui/garage.h"
#include "ui/pages/tasks/task_drafts.h"

namespace wm::ui {
namespace {

using base::Fault;
using upkeep::Counter;
using upkeep::TaskVersion;

const calendar::Date kToday = *calendar::parseDate("date", "2026-05-07");

// What is no field of the editor, so that the rest can be compared.
TaskVersion bare(const TaskVersion& task) {
    return {.id = task.id,
            .entered = task.entered,
            .task = task.task,
            .machine = task.machine,
            .code = task.code};
}

TEST(TaskDraftTest, EveryVersionOfTheDemoComesBackAsItWas) {
    Garage garage(Garage::Fill::Demo);
    int seen = 0;
    for (TaskVersion task : garage.book().ledger().all<TaskVersion>()) {
        task.validFrom = kToday;
        const auto again = versionFrom(draftOf(task), bare(task), kToday);
        ASSERT_TRUE(again.has_value()) << task.name;
        EXPECT_TRUE(*again == task) << task.name;
        ++seen;
    }
    EXPECT_GT(seen, 50);
}

TEST(TaskDraftTest, AVersionWithEverythingInItComesBackAsItWas) {
    const TaskVersion task{.validFrom = kToday,
                           .name = "Fork oil",
                           .position = "fork",
                           .consequence = upkeep::Consequence::SafetyHidden,
                           .limits = {{.counter = Counter::Metres, .every = 1'250'000, .first = 10'500},
                                      {.every = 2037, .allowance = 50},
                                      {.counter = Counter::Months, .every = 12, .hard = true}},
                           .weights = {{usage::Ground::Sand, {}, 1600},
                                       {{}, usage::Pace::Race, 1125},
                                       {usage::Ground::Unstated, usage::Pace::Unstated, 1000}},
                           .combine = upkeep::Combine::Last,
                           .countFrom = upkeep::CountFrom::FixedMarks,
                           .everyNth = 3,
                           .extra = "bushes",
                           .nthOf = "oil",
                           .nth = 2,
                           .triggers = {{upkeep::Happening::Job, "oil"}, {upkeep::Happening::Crash, ""}},
                           .kit = {{"oil", StockLineId{77}, 850, upkeep::Unit::Millilitre, true}},
                           .measures = {{"level", "mm", units::Decimal{1250, 1}, {}, "p. 3", true}},
                           .cautions = {{upkeep::Hazard::Spring}},
                           .steps = {{"front-wheel"}},
                           .joints = {{"cap"}},
                           .followUps = {{"look", "oil", upkeep::When::AfterHours, 150},
                                         {"look", "", upkeep::When::AfterDays, 3}},
                           .minutes = units::Minutes{45},
                           .tools = "cap wrench",
                           .howTo = "one leg\nthen the other",
                           .bodyState = upkeep::BodyState::Cold,
                           .renews = true,
                           .felt = false,
                           .source = "manual",
                           .page = "2-31",
                           .confirmed = true,
                           .active = false};
    const auto again = versionFrom<TaskVersion>(draftOf(task), {}, kToday);
    ASSERT_TRUE(again.has_value());
    EXPECT_TRUE(*again == task);
}

class TypedTask : public testing::Test {
  protected:
    Draft draft = draftOf<TaskVersion>({.name = "Fork oil", .limits = {{.every = 2000}}});
    DraftRow& limit() { return draft.lists["limits"][0]; }
    [[nodiscard]] base::Error fault() const {
        const auto read = versionFrom<TaskVersion>(draft, {}, kToday);
        EXPECT_FALSE(read.has_value());
        return read ? base::Error{} : read.error().front();
    }
};

TEST_F(TypedTask, TakesAnIntervalWithADecimalComma) {
    limit()["every"] = QStringLiteral("12,5");
    EXPECT_EQ(versionFrom<TaskVersion>(draft, {}, kToday)->limits[0].every, 1250);
    limit()["counter"] = QStringLiteral("metres");
    EXPECT_EQ(versionFrom<TaskVersion>(draft, {}, kToday)->limits[0].every, 12'500);  // typed in km
}

TEST_F(TypedTask, WhatAnHourCountsIsAFactor) {
    draft.lists["weights"] = {{{"ground", "sand"}, {"pace", ""}, {"permille", "1,6"}}};
    auto& factor = draft.lists["weights"][0]["permille"];
    const auto read = versionFrom<TaskVersion>(draft, {}, kToday);
    ASSERT_TRUE(read.has_value());
    EXPECT_EQ(read->weights, (std::vector<usage::HourWeight>{{usage::Ground::Sand, {}, 1600}}));
    const auto says = [&](const char* typed, base::Fault wanted) {
        factor = QString::fromUtf8(typed);
        EXPECT_EQ(fault().fault, wanted) << typed;
        EXPECT_EQ(fault().field, "weights[0].permille") << typed;
    };
    says("", base::Fault::Empty);
    says("0", base::Fault::NotPositive);
    says("-1", base::Fault::NotPositive);
    says("10,5", base::Fault::TooLarge);
    says("nan", base::Fault::NotANumber);
    says("1e3", base::Fault::NotANumber);
}

TEST_F(TypedTask, SaysWhereItCannotBeRead) {
    limit()["every"] = QStringLiteral("soon");
    EXPECT_EQ(fault(), (base::Error{Fault::NotANumber, "limits[0].every", "soon", fault().wanted}));
    limit()["every"] = QString();
    EXPECT_EQ(fault().fault, Fault::Empty);
    limit()["every"] = QStringLiteral("-3");
    EXPECT_EQ(fault().fault, Fault::Negative);
    limit()["every"] = QStringLiteral("20");
    draft.fields["valid_from"] = QStringLiteral("someday");
    EXPECT_EQ(fault().field, "valid_from");
}

TEST_F(TypedTask, NamesAllItsFaultsAtOnce) {
    limit()["every"] = QStringLiteral("soon");
    limit()["first"] = QStringLiteral("sooner");
    draft.fields["minutes"] = QStringLiteral("some");
    EXPECT_EQ(versionFrom<TaskVersion>(draft, {}, kToday).error().size(), 3U);
}

TEST(TaskDraftsTest, ForgetWhatSaysTheSameAgain) {
    TaskDrafts drafts;
    const TaskVersion task{.name = "Fork oil"};
    Draft draft = draftOf(task);
    draft.fields["page"] = QStringLiteral("3");
    drafts.keep(7, task, draft);
    ASSERT_NE(drafts.find(7), nullptr);
    draft.fields["page"].clear();
    drafts.keep(7, task, draft);
    EXPECT_EQ(drafts.find(7), nullptr);
}

TEST(TaskDraftsTest, ACopyForAnotherMachineBringsNoFigureOfItsManual) {
    Garage garage(Garage::Fill::Season);
    TaskVersion task = *garage.book().task(garage.task("Heron 250", "linkage-grease"));
    task.confirmed = true;
    task.page = "3-4";
    task.measures = {{"play", "mm", units::Decimal{1, 1}, units::Decimal{2, 1}, "manual p. 9", true}};
    task.steps.push_back({"not-there"});
    const auto copy = copiedTo(garage.book(), task, garage.machine("Sorrel 450"));
    EXPECT_EQ(copy.task, TaskId{});
    EXPECT_EQ(copy.code, task.code);
    EXPECT_EQ(copy.limits, task.limits);
    EXPECT_FALSE(copy.confirmed);
    EXPECT_TRUE(copy.page.empty());
    EXPECT_EQ(copy.source, "as on Heron 250");
    EXPECT_EQ(copy.measures, (std::vector<upkeep::MeasurePoint>{{.name = "play", .unit = "mm"}}));
    EXPECT_EQ(copy.steps.size() + 1, task.steps.size());
}

}  // namespace
}  // namespace wm::ui
