// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What is known of the tasks that nobody has recorded, said for a whole machine at once.
#include "core/verbs/baseline_verb.h"

#include <rapidcheck.h>

#include <set>

#include "core/book/unrecorded.h"
#include "tests/core/verbs/bench.h"

namespace wm::verbs {

using book::Book;
using book::DueLine;
using book::unknownOf;

namespace {

using base::Fault;
using units::Hours;
using upkeep::Counter;
using upkeep::RecordKind;

/// A used machine since 2026-03-01: its meter showed 41.0 on that day, 41 to 120 h behind it, likely 80. It
/// was ridden for 2 h on 8 March and for 3 h on 15 March, and the meter showed 46.0 that evening.
class UsedBench : public Bench {
  public:
    UsedBench() {
        must([](const VerbContext& context) {
            return saveMachine(context, {.name = "Sorrel 450",
                                         .since = day("2026-03-01"),
                                         .pastLow = Hours{4100},
                                         .pastBest = Hours{8000},
                                         .pastHigh = Hours{12000}});
        });
        sorrel = last<items::Machine>();
        read("2026-03-01", 4100, calendar::DayPart::BeforeRiding);
        must([this](const VerbContext& context) {
            return adoptSchedule(context, sorrel, "took over a schedule", {}, {},
                                 {{.name = "Oil", .limits = {{.every = 600}}},
                                  {.name = "Brake fluid",
                                   .consequence = upkeep::Consequence::SafetyEvident,
                                   .limits = {{.counter = Counter::Months, .every = 9}}},
                                  {.name = "Tyre", .limits = {{.every = 1000}}, .renews = true},
                                  {.name = "Top end", .position = "engine", .limits = {{.every = 3000}}}});
        });
        for (const auto& version : ledger().all<upkeep::TaskVersion>())
            tasks.push_back(version.task);
        ride("2026-03-08", 200);
        ride("2026-03-15", 300);
        read("2026-03-15", 4600, calendar::DayPart::AfterRiding);
        oil = tasks.at(0);
        fluid = tasks.at(1);
        tyre = tasks.at(2);
        top = tasks.at(3);
    }
    void ride(const char* on, std::int64_t hundredths) {
        must(saying(logOuting, {.outing = {.machine = sorrel, .date = day(on), .hours = Hours{hundredths}}}));
    }
    void read(const char* on, std::int64_t shown, calendar::DayPart part) {
        must(saying(logReading, {.machine = sorrel, .date = day(on), .part = part, .shown = Hours{shown}}));
    }
    static Verb known(MachineId machine, std::vector<BaselineLine> lines) {
        return saying(recordBaseline, machine, std::move(lines), SinceThen{});
    }
    [[nodiscard]] Verb known(std::vector<BaselineLine> lines) const {
        return known(sorrel, std::move(lines));
    }
    upkeep::CountBracket behind(TaskId task) { return book().dueLine(task)->countdown.limits.at(0).behind; }
    [[nodiscard]] const upkeep::Record& record() const { return ledger().all<upkeep::Record>().back(); }

    MachineId sorrel;
    std::vector<TaskId> tasks;
    TaskId oil;
    TaskId fluid;
    TaskId tyre;
    TaskId top;
};

class BaselineTest : public testing::Test, public UsedBench {};

TEST_F(BaselineTest, AllAnswersAreOneChange) {
    ASSERT_EQ(unknownOf(book(), sorrel).size(), 4U);
    EXPECT_EQ(must(known({{.task = oil, .answer = BaselineAnswer::LookedFine},
                          {.task = fluid, .answer = BaselineAnswer::Serviced, .date = day("2025-11-01")},
                          {.task = tyre}})),
              "noted what is known of 3 tasks on Sorrel 450");
    const auto& records = ledger().all<upkeep::Record>();
    ASSERT_EQ(records.size(), 3U);
    EXPECT_EQ(records.at(0).kind, RecordKind::LookedFine);
    EXPECT_EQ(records.at(0).date, today);
    EXPECT_EQ(records.at(1).kind, RecordKind::Baseline);
    EXPECT_EQ(records.at(2).kind, RecordKind::Baseline);
    EXPECT_EQ(records.at(2).note, "new");
    EXPECT_NE(records.at(0).entered, records.at(1).entered);
    ASSERT_EQ(unknownOf(book(), sorrel).size(), 1U);
    EXPECT_EQ(unknownOf(book(), sorrel).front()->task->task, top);
    EXPECT_TRUE(ledger().all<stock::StockMove>().empty());
}

TEST_F(BaselineTest, NewOnTheFirstDayHasTheWholeRidingHereBehindIt) {
    ride("2026-03-01", 100);
    must(known({{.task = tyre}}));
    EXPECT_EQ(record().date, day("2026-03-01"));
    // 1 + 2 + 3 h; the meter says 5 h for all three, so they are brought down to it.
    EXPECT_EQ(behind(tyre), (upkeep::CountBracket{500, 500, 500}));
}

TEST_F(BaselineTest, AnItemsOwnFirstDayIsMeant) {
    must([this](const VerbContext& context) {
        return addItemFitted(
            context, {.name = "engine", .since = day("2026-03-10"), .pastBest = Hours{9000}, .pastHigh = {}},
            {.date = day("2026-03-10"), .machine = sorrel, .position = "engine"});
    });
    must(known({{.task = top}}));
    EXPECT_EQ(record().date, day("2026-03-10"));
    EXPECT_EQ(record().item, last<items::Item>());
    EXPECT_EQ(behind(top), (upkeep::CountBracket{300, 300, 300}));
}

// It lay on the shelf first, while another one sat in its place.
TEST_F(BaselineTest, AnItemThatLayOnTheShelfIsNewFromItsFirstFitting) {
    const auto fit = [this](const char* name, const char* on) {
        must([&](const VerbContext& context) {
            return addItemFitted(
                context, {.name = name, .since = day("2026-03-02"), .pastBest = Hours{9000}, .pastHigh = {}},
                {.date = day(on), .machine = sorrel, .position = "engine"});
        });
        return last<items::Item>();
    };
    const auto first = fit("engine A", "2026-03-02");
    must(saying(moveItem, {.item = first, .date = day("2026-03-10"), .kind = items::MoveKind::Removed}));
    const auto second = fit("engine B", "2026-03-11");
    must(known({{.task = top}}));
    EXPECT_EQ(record().date, day("2026-03-11"));
    EXPECT_EQ(record().item, second);
    EXPECT_EQ(behind(top), (upkeep::CountBracket{300, 300, 300}));
    const auto& card = *ledger().find<items::Machine>(sorrel);
    EXPECT_EQ(firstRidden(book(), card, second).date, day("2026-03-11"));
    EXPECT_EQ(firstRidden(book(), card, std::nullopt).date, card.since);
}

TEST_F(BaselineTest, AnItemThatWasFittedBetweenTwoRidesOfOneDayIsNewFromThen) {
    must([this](const VerbContext& context) {
        return addItemFitted(
            context, {.name = "engine", .since = day("2026-03-02"), .pastBest = Hours{9000}, .pastHigh = {}},
            {.date = day("2026-03-08"),
             .part = calendar::DayPart::Riding,
             .machine = sorrel,
             .position = "engine"});
    });
    must(known({{.task = top}}));
    EXPECT_EQ(record().date, day("2026-03-08"));
    EXPECT_EQ(record().part, calendar::DayPart::Riding);
    EXPECT_EQ(record().item, last<items::Item>());
}

// What the van shook out of the meter is no riding, so a figure between two readings says no more than that
// it was after the first of them.
TEST_F(BaselineTest, AMeterThatCountsTheVanDatesToTheReadingBefore) {
    must([this](const VerbContext& context) {
        auto card = *context.book.ledger().find<items::Machine>(sorrel);
        card.meterCountsTransport = true;
        return saveMachine(context, card);
    });
    read("2026-03-20", 4900, calendar::DayPart::AfterRiding);
    must(known({{.task = oil, .answer = BaselineAnswer::Serviced, .meter = Hours{4700}}}));
    EXPECT_EQ(record().date, day("2026-03-15"));
    EXPECT_EQ(record().meter, Hours{4700});
    EXPECT_EQ(behind(oil), (upkeep::CountBracket{0, 0, 300}));
    // Exactly what a reading showed was on its evening.
    must(known({{.task = tyre, .answer = BaselineAnswer::Serviced, .meter = Hours{4900}}}));
    EXPECT_EQ(record().date, day("2026-03-20"));
    EXPECT_EQ(behind(tyre), (upkeep::CountBracket{0, 0, 0}));
}

// What came used may be older than the machine that it sits on now.
TEST_F(BaselineTest, AnItemIsAtLeastAsOldAsItIsKnown) {
    const auto fit = [this](const char* name, const char* since, const char* position) {
        must([&](const VerbContext& context) {
            return addItemFitted(context,
                                 {.name = name, .since = day(since), .pastBest = Hours{9000}, .pastHigh = {}},
                                 {.date = day("2026-03-02"), .machine = sorrel, .position = position});
        });
    };
    fit("fork", "2026-03-01", "fork");
    fit("shock", "2025-10-01", "shock");
    fit("arm", "2026-03-02", "arm");  // known a day later than the machine, and may be as old
    for (const char* name : {"fork", "shock", "arm"})
        must(saying(saveTask, upkeep::TaskVersion{.machine = sorrel,
                                                  .name = std::string(name) + " oil",
                                                  .position = name,
                                                  .limits = {{.counter = Counter::Months, .every = 12}}}));
    const Book now = book();
    std::vector<std::string> order;
    for (const DueLine* line : unknownOf(now, sorrel))
        if (!line->task->position.empty() && line->task->task != top)
            order.push_back(line->task->name);
    EXPECT_EQ(order, (std::vector<std::string>{"shock oil", "arm oil", "fork oil"}));
}

TEST_F(BaselineTest, TheMeterFindsTheDay) {
    // At 43.5 it was half an hour into the riding of 15 March: the evening of the 14th is the last one that
    // surely lies before it, so all 3 h count.
    must(known({{.task = oil, .answer = BaselineAnswer::Serviced, .meter = Hours{4350}}}));
    EXPECT_EQ(record().date, day("2026-03-14"));
    EXPECT_EQ(record().meter, Hours{4350});
    EXPECT_EQ(record().note, "dated by the meter");
    EXPECT_EQ(behind(oil).best, 300);
}

TEST_F(BaselineTest, TheMeterReachesBackBeforeTheFile) {
    // 30.0 on a meter that showed 41.0 on the first day: 11 h before it, whatever the past was.
    must(known({{.task = oil, .answer = BaselineAnswer::Serviced, .meter = Hours{3000}}}));
    EXPECT_EQ(record().date, day("2026-02-28"));
    EXPECT_EQ(behind(oil), (upkeep::CountBracket{1600, 1600, 1600}));
    EXPECT_EQ(ledger().all<usage::HourReading>().size(), 2U) << "without its day it is no reading";
}

TEST_F(BaselineTest, APastThatIsLessThanTheMeterRanIsNotReckonedWith) {
    must([this](const VerbContext& context) {
        auto card = *context.book.ledger().find<items::Machine>(sorrel);
        card.pastLow = Hours{0};
        card.pastBest = Hours{1000};
        card.pastHigh = Hours{1000};
        return saveMachine(context, card);
    });
    // 30.0 was 11 h before the first day, and only 10 h are stated.
    EXPECT_EQ(refusedAt(known({{.task = oil, .answer = BaselineAnswer::Serviced, .meter = Hours{3000}}})),
              (At{Fault::Inconsistent, "lines[0].meter"}));
    EXPECT_EQ(refusedAt(known({{.task = oil,
                                .answer = BaselineAnswer::Serviced,
                                .date = day("2026-02-01"),
                                .meter = Hours{3000}}})),
              (At{Fault::Inconsistent, "lines[0].meter"}));
    must(known({{.task = oil, .answer = BaselineAnswer::Serviced, .meter = Hours{3100}}}));
}

TEST_F(BaselineTest, AFigureThatWasWrittenDownBecomesAReading) {
    must(known(
        {{.task = oil, .answer = BaselineAnswer::Serviced, .date = day("2026-02-01"), .meter = Hours{3500}},
         {.task = top, .answer = BaselineAnswer::Serviced, .date = day("2026-02-01"), .meter = Hours{3500}},
         {.task = tyre, .answer = BaselineAnswer::Serviced, .date = day("2026-02-15")}}));
    const auto& readings = ledger().all<usage::HourReading>();
    ASSERT_EQ(readings.size(), 3U) << "one for both jobs";
    EXPECT_EQ(readings.back().date, day("2026-02-01"));
    EXPECT_EQ(readings.back().shown, Hours{3500});
    EXPECT_EQ(behind(oil), (upkeep::CountBracket{1100, 1100, 1100}));
    // Between the two figures of before: from none to all of the 6 h, by the days 2.89 of them, and 5 h here.
    EXPECT_EQ(behind(tyre), (upkeep::CountBracket{500, 789, 1100}));
    // What the meter tells is a part of the past that was stated.
    EXPECT_EQ(book().lifeAt(sorrel, {day("2026-03-01"), calendar::DayPart::BeforeRiding}).hours,
              (usage::HoursBracket{Hours{4100}, Hours{8000}, Hours{12000}}));
    // A figure that runs back against it, or against another one of the same go, is asked about.
    EXPECT_EQ(refusedAt(known({{.task = fluid,
                                .answer = BaselineAnswer::Serviced,
                                .date = day("2026-01-20"),
                                .meter = Hours{3300}},
                               {.task = tyre,
                                .answer = BaselineAnswer::Serviced,
                                .date = day("2026-01-10"),
                                .meter = Hours{3400}}})),
              (At{Fault::OutOfOrder, "lines[1].meter"}));
    EXPECT_EQ(refusedAt(known({{.task = fluid,
                                .answer = BaselineAnswer::Serviced,
                                .date = day("2026-01-15"),
                                .meter = Hours{3600}}})),
              (At{Fault::OutOfOrder, "lines[0].meter"}));
}

TEST_F(BaselineTest, WhatIsRememberedIsABracketAndNeverAReading) {
    must(known({{.task = oil, .answer = BaselineAnswer::Serviced, .hoursAgo = Remembered{1000, 1500, 20'000}},
                {.task = tyre, .answer = BaselineAnswer::Serviced, .meterThen = Remembered{2000, 2400, 2600}},
                {.task = top,
                 .answer = BaselineAnswer::Serviced,
                 .meterThen = Remembered{3300, std::nullopt, 3600}}}));
    EXPECT_EQ(behind(oil), (upkeep::CountBracket{1000, 1500, 12'500})) << "no older than the machine";
    EXPECT_EQ(behind(tyre), (upkeep::CountBracket{2000, 2200, 2600}));
    EXPECT_EQ(behind(top), (upkeep::CountBracket{1000, std::nullopt, 1300}));
    EXPECT_EQ(ledger().all<usage::HourReading>().size(), 2U);
    ride("2026-05-20", 100);
    EXPECT_EQ(behind(oil).best, 1600) << "logged once it had been said";
    EXPECT_EQ(behind(tyre).best, 2300) << "and the meter was not read since";
    today = day("2026-05-30");
    ride("2026-05-30", 100);
    EXPECT_EQ(behind(oil).best, 1700);
}

TEST_F(BaselineTest, ADayMayBeRememberedToo) {
    must(known({{.task = fluid,
                 .answer = BaselineAnswer::Serviced,
                 .day = RememberedDay{day("2025-08-01"), day("2025-09-01"), day("2025-10-01")}}}));
    EXPECT_EQ(record().date, day("2025-09-01"));
    const Book now = book();
    const auto& down = now.dueLine(fluid)->countdown;
    EXPECT_EQ(down.limits.at(0).behind.high, today - day("2025-08-01"));
    EXPECT_EQ(down.reached, upkeep::Reached::MayBe);
}

TEST_F(BaselineTest, SaidAgainItTakesThePlaceOfWhatWasSaid) {
    must(known({{.task = oil, .answer = BaselineAnswer::Serviced, .date = day("2026-02-20")}}));
    EXPECT_EQ(behind(oil), (upkeep::CountBracket{500, std::nullopt, 12'500}));
    must(known({{.task = oil,
                 .answer = BaselineAnswer::Serviced,
                 .date = day("2026-02-10"),
                 .meter = Hours{4000}}}));
    EXPECT_EQ(ledger().all<upkeep::Record>().size(), 1U);
    EXPECT_EQ(ledger().struck<upkeep::Record>().size(), 1U);
    EXPECT_EQ(behind(oil), (upkeep::CountBracket{600, 600, 600}));
}

TEST_F(BaselineTest, WhatCameSinceIsSaidOfAllJobsAtOnce) {
    must(saying(saveTask, upkeep::TaskVersion{.machine = sorrel,
                                              .name = "Bearings",
                                              .limits = {{.counter = Counter::Washes, .every = 10}}}));
    const auto bearings = ledger().all<upkeep::TaskVersion>().back().task;
    const SinceThen none{{{Counter::Washes, {0, 0, 0}}}, {}};
    EXPECT_EQ(refusedAt(saying(recordBaseline, sorrel, {}, none)), (At{Fault::Empty, "from"}));
    must(known({{.task = bearings, .answer = BaselineAnswer::Serviced, .date = day("2026-02-01")}}));
    EXPECT_EQ(book().dueLine(bearings)->standing.kind, outlook::StandingKind::NoRecord);
    EXPECT_EQ(unknownOf(book(), sorrel).size(), 5U) << "it is still asked about";
    EXPECT_EQ(must(saying(recordBaseline, sorrel, {}, none)), "noted what came since the jobs on Sorrel 450");
    EXPECT_EQ(behind(bearings), (upkeep::CountBracket{0, 0, 0}));
    // About so many since a day: of a later job at the most, of an earlier one at the least.
    must(saying(recordBaseline, sorrel, {}, SinceThen{{{Counter::Washes, {6, 8, 12}}}, day("2026-01-01")}));
    EXPECT_EQ(behind(bearings), (upkeep::CountBracket{0, std::nullopt, 12}));
    must(saying(recordBaseline, sorrel, {}, SinceThen{{{Counter::Washes, {6, 8, 12}}}, day("2026-02-01")}));
    EXPECT_EQ(behind(bearings), (upkeep::CountBracket{6, 8, 12}));
    must(saying(recordBaseline, sorrel, {}, SinceThen{{{Counter::Washes, {6, 8, 12}}}, day("2026-02-10")}));
    EXPECT_EQ(behind(bearings), (upkeep::CountBracket{6, std::nullopt, std::nullopt}));
    EXPECT_EQ(refusedAt(saying(recordBaseline, sorrel, {}, SinceThen{{{Counter::Hours, {0, 0, 0}}}, {}})),
              (At{Fault::Inconsistent, "all[0].counter"}));
    EXPECT_EQ(refusedAt(saying(recordBaseline, sorrel, {}, SinceThen{{{Counter::Washes, {3, 2, 1}}}, {}})),
              (At{Fault::OutOfOrder, "all[0].count"}));
}

TEST_F(BaselineTest, AMeterThatBeganAnewIsReadFromItsNewestStretch) {
    must(saying(logReading, {.machine = sorrel,
                             .date = day("2026-03-20"),
                             .shown = Hours{0},
                             .event = usage::MeterEvent::Replaced,
                             .before = Hours{4600}}));
    ride("2026-04-01", 2200);
    ride("2026-04-02", 2000);
    read("2026-04-02", 4200, calendar::DayPart::AfterRiding);
    must(known({{.task = oil, .answer = BaselineAnswer::Serviced, .meter = Hours{4150}}}));
    EXPECT_EQ(record().date, day("2026-04-01"));  // of the new meter, not of the old one in March
    EXPECT_EQ(behind(oil).best, 2000);
    // 45.0 stood on the old one alone, on 15 March.
    must(known({{.task = tyre, .answer = BaselineAnswer::Serviced, .meter = Hours{4500}}}));
    EXPECT_EQ(record().date, day("2026-03-14"));
}

TEST_F(BaselineTest, EachLineIsCheckedAndTheWrongOneIsNamed) {
    const BaselineLine fine{.task = oil};
    const auto at = [&](BaselineLine line) { return refusedAt(known({fine, line})); };
    EXPECT_EQ(at({.task = TaskId{7}}), (At{Fault::Unknown, "lines[1].task"}));
    EXPECT_EQ(at({.task = oil}), (At{Fault::Duplicate, "lines[1].task"}));
    EXPECT_EQ(at({.task = tyre, .answer = BaselineAnswer::LookedFine}),
              (At{Fault::Inconsistent, "lines[1].answer"}));
    EXPECT_EQ(at({.task = fluid, .answer = BaselineAnswer::Serviced}), (At{Fault::Empty, "lines[1].date"}));
    EXPECT_EQ(at({.task = fluid, .answer = BaselineAnswer::Serviced, .meter = Hours{3000}}),
              (At{Fault::Empty, "lines[1].date"}));  // hours say nothing to nine months
    EXPECT_EQ(at({.task = tyre, .answer = BaselineAnswer::Serviced, .meter = Hours{4601}}),
              (At{Fault::TooLarge, "lines[1].meter"}));
    EXPECT_EQ(at({.task = tyre, .answer = BaselineAnswer::Serviced, .date = day("2026-05-21")}),
              (At{Fault::InFuture, "lines[1].date"}));
    EXPECT_EQ(at({.task = fluid, .answer = BaselineAnswer::LookedFine, .date = day("2026-02-01")}),
              (At{Fault::BeforeItsTime, "lines[1].date"}));
    EXPECT_EQ(at({.task = tyre,
                  .answer = BaselineAnswer::Serviced,
                  .date = day("2026-03-16"),
                  .meter = Hours{4200}}),
              (At{Fault::MeterRunsBack, "lines[1].meter"}));
    EXPECT_EQ(refusedAt(known({})), (At{Fault::NothingToDo, "lines"}));
    EXPECT_EQ(refusedAt(known(MachineId{3}, {fine})), (At{Fault::Unknown, "machine"}));
    EXPECT_TRUE(ledger().all<upkeep::Record>().empty());
}

TEST_F(BaselineTest, WithoutAReadingAnHourFigureSaysNothing) {
    must([](const VerbContext& context) {
        return saveMachine(context, {.name = "Plover 125", .since = day("2026-04-01"), .pastHigh = {}});
    });
    const auto plover = last<items::Machine>();
    must([plover](const VerbContext& context) {
        return adoptSchedule(context, plover, "took over", {}, {},
                             {{.name = "Oil", .limits = {{.every = 600}}}});
    });
    const auto task = ledger().all<upkeep::TaskVersion>().back().task;
    EXPECT_EQ(
        refusedAt(known(plover, {{.task = task, .answer = BaselineAnswer::Serviced, .meter = Hours{100}}})),
        (At{Fault::Inconsistent, "lines[0].meter"}));
}

TEST_F(BaselineTest, AnotherItemInThePositionThenIsSaid) {
    const auto fit = [this](const char* name, const char* on) {
        must([&](const VerbContext& context) {
            return addItemFitted(context, {.name = name, .since = day("2026-03-01"), .pastHigh = {}},
                                 {.date = day(on), .machine = sorrel, .position = "engine"});
        });
        return last<items::Item>();
    };
    const auto first = fit("engine A", "2026-03-02");
    must(saying(moveItem, {.item = first, .date = day("2026-03-20"), .kind = items::MoveKind::Removed}));
    fit("engine B", "2026-03-21");
    EXPECT_EQ(
        refusedAt(known({{.task = top, .answer = BaselineAnswer::Serviced, .date = day("2026-03-10")}})),
        (At{Fault::BeforeItsTime, "lines[0].date"}));
    must(known({{.task = top, .answer = BaselineAnswer::Serviced, .date = day("2026-03-22")}}));
}

// The lines don't depend on one another: a list is accepted if each of its lines is by itself, else the first
// one that is not is named; and what is accepted ends "no record" and puts nothing out of reach of the past.
TEST(BaselineProperties, AListIsItsLines) {
    const UsedBench start;
    const auto lines = rc::gen::container<std::vector<BaselineLine>>(
        rc::gen::map(rc::gen::tuple(rc::gen::inRange<std::size_t>(0, 5), rc::gen::inRange(0, 4),
                                    rc::gen::inRange(-400, 90), rc::gen::inRange<std::int64_t>(-100, 4'700),
                                    rc::gen::inRange(0, 4)),
                     [&start](const auto& t) {
                         const auto [task, answer, on, meter, gives] = t;
                         BaselineLine line{.task = task < start.tasks.size() ? start.tasks[task] : TaskId{3},
                                           .answer = static_cast<BaselineAnswer>(answer)};
                         if (gives % 2 == 1)
                             line.date = day("2026-03-01").plusDays(on);
                         if (gives == 2)  // with its day it is a reading, and must fit the others
                             line.meter = Hours{meter};
                         return line;
                     }));
    int accepted = 0;
    EXPECT_TRUE(rc::check("a list is its lines", [&] {
        const auto list = *rc::gen::resize(rc::kNominalSize / 12, lines);
        std::optional<std::size_t> wrong;
        std::set<TaskId> seen;
        for (std::size_t at = 0; at < list.size() && !wrong; ++at) {
            UsedBench alone;
            if (!alone.say(UsedBench::known(alone.sorrel, {list[at]})) || !seen.insert(list[at].task).second)
                wrong = at;
        }
        UsedBench bench;
        const auto change = bench.say(bench.known(list));
        RC_ASSERT(change.has_value() == (!wrong && !list.empty()));
        if (!change) {
            const std::string place = list.empty() ? "lines" : "lines[" + std::to_string(*wrong) + "].";
            RC_ASSERT(change.error().field.text().starts_with(place));
            RC_ASSERT(bench.ledger().all<upkeep::Record>().empty());
            return;
        }
        ++accepted;
        const auto book = bench.book();
        for (const BaselineLine& line : list) {
            const auto& down = book.dueLine(line.task)->countdown;
            RC_ASSERT(!down.noRecord);
            const auto& behind = down.limits.at(0).behind;
            RC_ASSERT(behind.low <= behind.best.value_or(behind.low));
            RC_ASSERT(!behind.high || behind.best.value_or(behind.low) <= *behind.high);
            if (line.task != bench.fluid && line.meter && !line.date &&
                line.answer == BaselineAnswer::Serviced)
                RC_ASSERT(behind.best >= 4600 - line.meter->count());  // never less than the meter ran
        }
    }));
    EXPECT_GT(accepted, 0);
}

}  // namespace
}  // namespace wm::verbs
