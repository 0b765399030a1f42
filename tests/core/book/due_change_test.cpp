// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/due_change.h"
#include "core/verbs/what_if.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "tests/core/verbs/bench.h"

namespace wm::book {

using namespace verbs;

namespace {

using outlook::StandingKind;
using upkeep::TaskVersion;

/// A furnished bench with a season behind it, a race ahead, and a third task that follows the oil change.
class Season : public FurnishedBench {
  public:
    Season() {
        must(saying(saveTask, {.machine = heron, .name = "Oil screen", .nthOf = "oil-change", .nth = 2}));
        for (const auto& task : ledger().all<TaskVersion>())
            if (task.code == "oil-screen")
                screen = task.task;
        must(saying(saveEvent, {.name = "Ridge Cross",
                                .first = day("2026-05-30"),
                                .last = day("2026-05-30"),
                                .entries = {{heron, std::nullopt}}}));
        must(record({.record = job(oilChange, "2026-02-01")}));
        must(record({.record = job(oilChange, "2026-04-01")}));
        for (const char* on : {"2026-04-12", "2026-04-26", "2026-05-10"})
            must(ride({.outing = outing(on, 150), .handTightSeen = true}));
    }
    [[nodiscard]] TaskVersion oilVersion() const { return *book().task(oilChange); }
    [[nodiscard]] std::vector<DueMove> movesOf(const TaskVersion& version) {
        const auto seen =
            whatIf(now_ ? *now_ : *(now_ = std::make_unique<Book>(book())), saying(saveTask, version), heron);
        EXPECT_TRUE(seen.has_value());
        kept_ = seen ? seen->after : nullptr;
        return seen ? seen->moves : std::vector<DueMove>{};
    }
    TaskId screen;

  private:
    std::unique_ptr<Book> now_;
    std::shared_ptr<const Book> kept_;
};

TEST(DueChangeTest, AShorterIntervalMovesTheTaskAndNoOther) {
    Season season;
    ASSERT_EQ(season.book().dueLine(season.oilChange)->countdown.limits[0].left, 150);
    TaskVersion version = season.oilVersion();
    version.limits[0].every = 400;  // 4.5 h are behind it: 0.5 h over
    const auto moves = season.movesOf(version);
    ASSERT_EQ(moves.size(), 1U);
    EXPECT_EQ(moves[0].before->task->task, season.oilChange);
    EXPECT_EQ(moves[0].before->countdown.limits[0].left, 150);
    EXPECT_EQ(moves[0].after->countdown.limits[0].left, -50);
    EXPECT_EQ(moves[0].after->standing.kind, StandingKind::Overdue);
    EXPECT_EQ(season.oilVersion().limits[0].every, 600);  // nothing was written
}

TEST(DueChangeTest, ATaskThatFollowsAnotherMovesWithIt) {
    Season season;
    TaskVersion version = *season.book().task(season.screen);
    version.nth = 3;
    EXPECT_EQ(season.movesOf(version).size(), 1U);
    version.active = false;
    const auto moves = season.movesOf(version);
    ASSERT_EQ(moves.size(), 1U);
    EXPECT_TRUE(moves[0].before);
    EXPECT_FALSE(moves[0].after);
}

TEST(DueChangeTest, ANewTaskComesOntoTheList) {
    Season season;
    const auto moves =
        season.movesOf({.machine = season.heron, .name = "Spokes", .limits = {{.every = 200}}});
    ASSERT_EQ(moves.size(), 1U);
    EXPECT_FALSE(moves[0].before);
    EXPECT_EQ(moves[0].after->task->name, "Spokes");
    EXPECT_GT(moves[0].after->countdown.limits[0].left, -1000);
}

TEST(DueChangeTest, AnotherClassOfConsequenceReadsOtherwise) {
    Season season;
    TaskVersion version = season.oilVersion();
    version.consequence = upkeep::Consequence::EndsRace;
    EXPECT_EQ(season.movesOf(version).size(), 1U);
}

TEST(DueChangeTest, WhatTheVerbRefusesIsRefused) {
    Season season;
    TaskVersion version = season.oilVersion();
    version.limits[0].every = 0;
    const Book now = season.book();
    const auto seen = whatIf(now, saying(saveTask, version), season.heron);
    ASSERT_FALSE(seen.has_value());
    EXPECT_EQ(seen.error().field, "limits[0].every");
}

// -- whatever is changed

void changeWords(TaskVersion& task, int which, const std::string& words) {
    switch (which) {
        case 0:
            task.name = words;
            return;
        case 1:
            task.source = words;
            return;
        case 2:
            task.page = words;
            return;
        case 3:
            task.tools = words;
            return;
        case 4:
            task.howTo = words;
            return;
        case 5:
            task.minutes = units::Minutes{static_cast<std::int64_t>(words.size())};
            return;
        case 6:
            task.kit = {{.what = words}};
            return;
        case 7:
            task.cautions = {{upkeep::Hazard::HotParts}};
            return;
        case 8:
            task.followUps = {{.what = words}};
            return;
        default:
            task.measures = {{.name = words, .unit = "mm"}};
    }
}

void changeFigures(TaskVersion& task, int which, std::int64_t amount) {
    switch (which) {
        case 0:
            task.limits = {{.every = amount}};
            return;
        case 1:
            task.limits = {{.every = amount, .allowance = amount / 3}};
            return;
        case 2:
            task.limits = {{.every = 600}, {.counter = upkeep::Counter::Days, .every = amount}};
            return;
        case 3:
            task.countFrom = upkeep::CountFrom::FixedMarks;
            return;
        case 4:
            task.triggers = {{.happening = upkeep::Happening::BeforeRace}};
            return;
        case 5:
            task.active = false;
            return;
        default:
            task.limits = {{.every = 10'000, .first = amount}};
    }
}

// What a reader sees, put together anew from the line.
std::string asRead(const DueLine* line) {
    if (line == nullptr)
        return "not on the list";
    const auto& countdown = line->countdown;
    std::string words(base::nameOf(line->standing.kind));
    if (line->standing.likely)
        words += ' ' + line->standing.likely->iso();
    if (line->standing.kind == StandingKind::BeforeEvent && line->standing.event)
        words += " before " + line->standing.event->name;
    if (countdown.governing) {
        const auto& state = countdown.limits.at(*countdown.governing);
        words += state.dueOn ? " on " + state.dueOn->iso() : " left " + std::to_string(state.left);
        words += ' ' + std::string(base::nameOf(state.limit.counter));
    }
    if (countdown.triggered)
        words += " set off by " + std::string(base::nameOf(*countdown.triggered));
    if (countdown.triggeredOn)
        words += ' ' + countdown.triggeredOn->iso();
    words += countdown.over ? " due" : "";
    return words + (line->countdown.noRecord ? " no record " : " ") +
           std::string(base::nameOf(line->task->consequence));
}

TEST(DueChangePropertyTest, AChangeOfWordsChangesNothing) {
    Season season;
    EXPECT_TRUE(rc::check([&season] {
        TaskVersion task = season.oilVersion();
        for (const int which : *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 10)))
            changeWords(task, which,
                        *rc::gen::elementOf(std::vector<std::string>{"p. 2-31", "Oil, new", "manual", "x"}));
        task.felt = !task.felt;
        RC_ASSERT(season.movesOf(task).empty());
    }));
}

TEST(DueChangePropertyTest, WhatIsListedIsWhatSavingDoes) {
    EXPECT_TRUE(rc::check([] {
        Season season;
        TaskVersion task = season.oilVersion();
        for (const int which : *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 7)))
            changeFigures(task, which, *rc::gen::inRange<std::int64_t>(1, 1200));
        task.felt = !task.felt;  // never the same version again
        const Book before = season.book();
        const auto seen = whatIf(before, saying(saveTask, task), season.heron);
        RC_ASSERT(seen.has_value());
        season.must(saying(saveTask, task));
        const Book after = season.book();
        for (const TaskId id : {season.oilChange, season.pads, season.screen}) {
            const auto* was = before.dueLine(id);
            const auto* is = after.dueLine(id);
            const auto listed =
                std::find_if(seen->moves.begin(), seen->moves.end(), [id](const DueMove& move) {
                    return (move.before ? move.before : move.after)->task->task == id;
                });
            RC_ASSERT((listed != seen->moves.end()) == (asRead(was) != asRead(is)));
            if (listed == seen->moves.end())
                continue;
            RC_ASSERT(asRead(listed->before ? &*listed->before : nullptr) == asRead(was));
            RC_ASSERT(asRead(listed->after ? &*listed->after : nullptr) == asRead(is));
        }
    }));
}

}  // namespace
}  // namespace wm::book
