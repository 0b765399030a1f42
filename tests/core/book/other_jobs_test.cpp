// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// "Every second oil change", "after a new piston": jobs that wait for other jobs, on parts, wholes and the
// machine.
#include <gtest/gtest.h>

#include "core/book/book.h"

namespace wm::book {

using picture::Ledger;
using picture::Row;

namespace {

constexpr MachineId kMachine{1};
constexpr ItemId kEngine{10};
constexpr ItemId kPiston{11};
constexpr ItemId kSpareEngine{12};
constexpr ItemId kWheel{13};
constexpr ItemId kOtherWheel{14};
const calendar::Date kDay{20'000};

upkeep::TaskVersion task(std::int64_t id, std::string code, std::string position, std::string after) {
    upkeep::TaskVersion version{.id = TaskVersionId{id + 1000},
                                .task = TaskId{id},
                                .machine = kMachine,
                                .validFrom = kDay,
                                .code = std::move(code),
                                .position = std::move(position)};
    if (!after.empty())
        version.triggers.push_back({upkeep::Happening::Job, std::move(after)});
    return version;
}

items::Move fitted(std::int64_t id, ItemId item, std::optional<MachineId> machine,
                   std::optional<ItemId> parent, std::string position, int day) {
    return {.id = MoveId{id},
            .item = item,
            .date = kDay.plusDays(day),
            .part = calendar::DayPart::BeforeRiding,
            .machine = machine,
            .parent = parent,
            .position = std::move(position)};
}

items::Move taken(std::int64_t id, ItemId item, int day) {
    return {.id = MoveId{id},
            .item = item,
            .date = kDay.plusDays(day),
            .part = calendar::DayPart::BeforeRiding,
            .kind = items::MoveKind::Removed};
}

upkeep::Record record(std::int64_t id, std::string code, std::optional<ItemId> item, int day) {
    return {.id = RecordId{id},
            .entered = id,
            .machine = kMachine,
            .item = item,
            .code = std::move(code),
            .date = kDay.plusDays(day)};
}

std::vector<Row> garage() {
    return {items::Machine{.id = kMachine, .name = "Heron", .since = kDay, .startedNew = true},
            items::Item{.id = kEngine, .name = "no. 1", .since = kDay, .startedNew = true},
            items::Item{.id = kPiston, .name = "piston", .since = kDay, .startedNew = true},
            items::Item{.id = kSpareEngine, .name = "no. 2", .since = kDay, .startedNew = true},
            items::Item{.id = kWheel, .name = "mud wheel", .since = kDay, .startedNew = true},
            items::Item{.id = kOtherWheel, .name = "hard wheel", .since = kDay, .startedNew = true},
            fitted(20, kEngine, kMachine, {}, "engine", 0),
            fitted(21, kPiston, {}, kEngine, "piston", 0),
            fitted(22, kWheel, kMachine, {}, "rear wheel", 0),
            task(100, "bore", "engine", "piston-kit"),
            task(101, "piston-kit", "engine/piston", "engine-strip"),
            task(102, "rear-disc", "rear wheel", "rear-pads"),
            task(103, "engine-strip", "engine", ""),
            task(104, "rear-pads", "", "")};
}

bool isTriggered(std::vector<Row> rows, std::int64_t task) {
    const Book book(std::make_shared<Ledger>(std::move(rows)), kDay.plusDays(30));
    return book.dueLine(TaskId{task})->countdown.triggered.has_value();
}

std::vector<Row> with(std::vector<Row> rows, std::vector<Row> more) {
    rows.insert(rows.end(), more.begin(), more.end());
    return rows;
}

TEST(OtherJobsTest, AJobOnAPartConcernsTheWholeAndTheOtherWayRound) {
    EXPECT_FALSE(isTriggered(garage(), 100));
    EXPECT_TRUE(isTriggered(with(garage(), {record(50, "piston-kit", kPiston, 5)}), 100));
    EXPECT_TRUE(isTriggered(with(garage(), {record(50, "engine-strip", kEngine, 5)}), 101));
}

TEST(OtherJobsTest, AJobOnAnotherEngineDoesNot) {
    const auto rows = with(
        garage(),
        {record(50, "piston-kit", kPiston, 5),
         items::Move{
             .id = MoveId{23}, .item = kEngine, .date = kDay.plusDays(9), .kind = items::MoveKind::Removed},
         fitted(24, kSpareEngine, kMachine, {}, "engine", 10)});
    EXPECT_FALSE(isTriggered(rows, 100));
}

TEST(OtherJobsTest, AJobOnTheMachineConcernsTheWheelThatWasIn) {
    const auto pads = with(garage(), {record(50, "rear-pads", {}, 5)});
    EXPECT_TRUE(isTriggered(pads, 102));
    const auto swapped = with(
        pads,
        {items::Move{
             .id = MoveId{23}, .item = kWheel, .date = kDay.plusDays(9), .kind = items::MoveKind::Removed},
         fitted(24, kOtherWheel, kMachine, {}, "rear wheel", 10)});
    EXPECT_FALSE(isTriggered(swapped, 102));
    EXPECT_TRUE(isTriggered(with(swapped, {record(51, "rear-pads", {}, 12)}), 102));
}

// The clearances of an engine are its own: they go with it, and the one that comes in is not judged by them.
TEST(OtherJobsTest, AMeasuredValueGoesWithItsEngine) {
    auto look = task(110, "clearance", "engine", "");
    look.measures = {{.name = "inlet right", .unit = "mm", .least = units::Decimal{9, 2}, .job = "shims"}};
    auto measured = record(60, "clearance", kEngine, 3);
    measured.measured = {{"inlet right", "mm", units::Decimal{9, 2}}};
    const auto rows = with(garage(), {look, task(111, "shims", "engine", ""), measured});
    const auto isDue = [](std::vector<Row> all, std::int64_t of) {
        const Book book(std::make_shared<Ledger>(std::move(all)), kDay.plusDays(30));
        const auto& line = *book.dueLine(TaskId{of});
        EXPECT_EQ(line.countdown.value.has_value(), line.standing.kind == outlook::StandingKind::Overdue);
        return line.countdown.value.has_value();
    };
    EXPECT_TRUE(isDue(rows, 111));
    EXPECT_FALSE(isDue(rows, 110)) << "the look keeps its own round";
    const auto swapped =
        with(rows, {taken(61, kEngine, 5), fitted(62, kSpareEngine, kMachine, {}, "engine", 5)});
    EXPECT_FALSE(isDue(swapped, 111));
    const auto back =
        with(swapped, {taken(63, kSpareEngine, 8), fitted(64, kEngine, kMachine, {}, "engine", 8)});
    EXPECT_TRUE(isDue(back, 111));
    EXPECT_FALSE(isDue(with(back, {record(65, "shims", kEngine, 9)}), 111));
}

}  // namespace
}  // namespace wm::book
