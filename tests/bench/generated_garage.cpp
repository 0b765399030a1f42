// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/generated_garage.h"

#include <fmt/format.h>

namespace wm::bench {

namespace {

using calendar::Date;
using units::Hours;

// Numerical Recipes' linear congruential step: chance enough for a load, and the same everywhere.
class Dice {
  public:
    int upTo(int most) {
        state_ = state_ * 1664525U + 1013904223U;
        return static_cast<int>((state_ >> 8U) % static_cast<std::uint32_t>(most));
    }

  private:
    std::uint32_t state_ = 20260507U;
};

class Garage {
  public:
    explicit Garage(const GarageSize& size)
        : size_(size), first_(*calendar::makeDate(kLastYear - size.years, 1, 1)) {}

    std::vector<picture::Row> rows() {
        rows_.emplace_back(picture::Garage{.id = GarageId(1), .name = "generated"});
        rows_.emplace_back(stock::StockLine{.id = StockLineId(nextId_++), .name = "engine oil"});
        line_ = std::get<stock::StockLine>(rows_.back()).id;
        for (int machine = 0; machine < size_.machines; ++machine)
            addMachine(machine);
        return std::move(rows_);
    }

  private:
    void addMachine(int number) {
        const MachineId machine(nextId_++);
        rows_.emplace_back(items::Machine{.id = machine,
                                          .name = fmt::format("Machine {:02}", number + 1),
                                          .since = first_,
                                          .startedNew = true});
        tasks_.clear();
        for (int task = 0; task < size_.tasks; ++task)
            addTask(machine, task);
        std::int64_t meter = 0;
        for (int year = 0; year < size_.years; ++year)
            for (int week = 0; week < 40; ++week)
                addWeek(machine, first_.plusDays(year * 365 + 30 + week * 7), meter);
    }

    void addTask(MachineId machine, int number) {
        upkeep::TaskVersion task{.id = TaskVersionId(nextId_++),
                                 .entered = ++entered_,
                                 .task = TaskId(nextId_++),
                                 .machine = machine,
                                 .validFrom = first_,
                                 .code = fmt::format("task-{}", number),
                                 .name = fmt::format("Task {}", number)};
        task.limits.push_back({.counter = upkeep::Counter::Hours, .every = 500 + 50 * number});
        if (number % 3 == 0)
            task.limits.push_back({.counter = upkeep::Counter::Washes, .every = 8 + number % 7});
        if (number % 4 == 0)
            task.limits.push_back({.counter = upkeep::Counter::Months, .every = 12});
        tasks_.push_back({task.task, task.id, task.code});
        rows_.emplace_back(std::move(task));
    }

    // A week: an outing, its reading, a wash, and about seven jobs or moves of the shelf.
    void addWeek(MachineId machine, Date day, std::int64_t& meter) {
        const std::int64_t hours = 80 + dice_.upTo(200);
        meter += hours;
        rows_.emplace_back(
            usage::Outing{.id = OutingId(nextId_++),
                          .entered = ++entered_,
                          .machine = machine,
                          .date = day,
                          .kind = dice_.upTo(3) == 0 ? usage::OutingKind::Race : usage::OutingKind::Practice,
                          .hours = Hours(hours),
                          .ground = static_cast<usage::Ground>(dice_.upTo(6))});
        rows_.emplace_back(usage::HourReading{.id = ReadingId(nextId_++),
                                              .entered = ++entered_,
                                              .machine = machine,
                                              .date = day,
                                              .shown = Hours(meter)});
        rows_.emplace_back(usage::Wash{.id = WashId(nextId_++),
                                       .entered = ++entered_,
                                       .machine = machine,
                                       .date = day,
                                       .pressure = dice_.upTo(2) == 0});
        for (int job = 0; job < 5; ++job)
            addRecord(machine, day.plusDays(1 + dice_.upTo(5)));
    }

    void addRecord(MachineId machine, Date day) {
        const Done& task = tasks_[static_cast<std::size_t>(dice_.upTo(size_.tasks))];
        const RecordId record(nextId_++);
        rows_.emplace_back(upkeep::Record{.id = record,
                                          .entered = ++entered_,
                                          .machine = machine,
                                          .task = task.task,
                                          .version = task.version,
                                          .code = task.code,
                                          .date = day,
                                          .what = task.code});
        if (dice_.upTo(2) == 0)
            rows_.emplace_back(stock::StockMove{.id = StockMoveId(nextId_++),
                                                .entered = ++entered_,
                                                .line = line_,
                                                .date = day,
                                                .amount = -1,
                                                .record = record});
    }

    struct Done {
        TaskId task;
        TaskVersionId version;
        std::string code;
    };

    GarageSize size_;
    Date first_;
    Dice dice_;
    std::vector<picture::Row> rows_;
    std::vector<Done> tasks_;
    StockLineId line_{};
    std::int64_t nextId_ = 2;  // 1 is the garage
    base::Entered entered_ = 0;
};

}  // namespace

std::vector<picture::Row> generatedGarage(const GarageSize& size) {
    return Garage(size).rows();
}

}  // namespace wm::bench
