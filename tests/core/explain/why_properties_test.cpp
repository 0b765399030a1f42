// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// In every garage, however careless, each derivation adds up to what the countdown says.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "tests/core/explain/adds_up.h"
#include "tests/core/slow/random_garage.h"

namespace wm::explain {
namespace {

using upkeep::Counter;

// The rows of a random garage, with a task of every limit on the machine and on each of its items, and for
// some a record of some moment.
class Rows {
  public:
    Rows(slow::Garage garage, std::uint64_t seed) : garage_(std::move(garage)), chance_(seed) {
        for (const auto& [machine, use] : garage_.use)
            addMachine(machine, use);
        for (items::Item item : garage_.items)
            rows_.emplace_back(aged(std::move(item)));
        for (const items::Move& move : garage_.moves)
            rows_.emplace_back(move);
    }
    [[nodiscard]] book::Book book() { return {std::make_shared<const picture::Ledger>(rows_), garage_.last}; }

  private:
    bool oneIn(std::uint64_t n) { return chance_() % n == 0; }
    std::int64_t upTo(std::uint64_t most) { return static_cast<std::int64_t>(chance_() % (most + 1)); }

    template <class Card>
    Card aged(Card card) {
        card.since = garage_.first;
        card.startedNew = oneIn(2);
        if (card.startedNew)
            return card;
        card.pastLow = units::Hours{upTo(500)};
        card.pastBest = card.pastLow + units::Hours{upTo(500)};
        if (oneIn(2))
            card.pastHigh = card.pastBest + units::Hours{upTo(500)};
        return card;
    }
    void addMachine(MachineId machine, const usage::UseFacts& use) {
        rows_.emplace_back(aged(items::Machine{.id = machine}));
        for (const auto& row : use.hourReadings)
            rows_.emplace_back(row);
        for (const auto& row : use.outings)
            rows_.emplace_back(row);
        for (const auto& row : use.washes)
            rows_.emplace_back(row);
        for (const auto& row : use.crashes)
            rows_.emplace_back(row);
        for (const char* position : {"", "engine", "engine/piston", "front wheel"})
            addTask(machine, position);
    }
    void addTask(MachineId machine, const char* position) {
        upkeep::TaskVersion task;
        task.id = TaskVersionId{++id_};
        task.entered = id_;
        task.task = TaskId{++id_};
        task.machine = machine;
        task.validFrom = garage_.first;
        task.code = position;
        task.code += "job";
        task.position = position;
        if (oneIn(2))
            task.consequence = upkeep::Consequence::SafetyHidden;
        if (oneIn(2))
            task.combine = upkeep::Combine::Last;
        if (oneIn(2))
            task.countFrom = upkeep::CountFrom::FixedMarks;
        for (const auto counter :
             {Counter::Hours, Counter::Metres, Counter::Outings, Counter::Starts, Counter::Washes,
              Counter::MudDays, Counter::Crashes, Counter::Days, Counter::Months})
            task.limits.push_back({.counter = counter, .every = 1 + upTo(2000), .first = 1 + upTo(1000)});
        if (oneIn(2))
            task.weights = garage_.weights;
        rows_.emplace_back(task);
        if (oneIn(2))
            addRecord(task);
    }
    void addRecord(const upkeep::TaskVersion& task) {
        const auto moment = slow::randomMoment(garage_, chance_);
        upkeep::Record record;
        record.id = RecordId{++id_};
        record.entered = id_;
        record.machine = task.machine;
        record.task = task.task;
        record.code = task.code;
        record.date = moment.date;
        record.part = moment.part;
        if (!task.position.empty())
            record.item =
                items::Fittings(garage_.moves)
                    .at(task.machine, task.position, {garage_.last, calendar::DayPart::AfterRiding});
        if (oneIn(2)) {
            record.kind = upkeep::RecordKind::Baseline;
            record.statedBest = units::Hours{upTo(800)};
        }
        rows_.emplace_back(record);
    }

    slow::Garage garage_;
    std::mt19937_64 chance_;
    std::vector<picture::Row> rows_;
    std::int64_t id_ = 1'000'000;
};

void expectLimits(const Step& root, const upkeep::Countdown& down) {
    std::size_t at = 0;
    for (const Step& step : root.children) {
        if (step.kind != StepKind::Limit)
            continue;
        const upkeep::LimitState& state = down.limits.at(at++);
        RC_ASSERT(step.figure->best == state.left);
        RC_ASSERT(step.children[0].figure->best == state.amount);
        RC_ASSERT(step.children[1].figure == state.behind);
        if (state.stoodAt)
            RC_ASSERT(step.children[0].children[0].figure->low % state.limit.every == 0);
    }
    RC_ASSERT(at == down.limits.size());
}

TEST(WhyPropertiesTest, TheChildrenMakeTheFigureOfTheParent) {
    EXPECT_TRUE(rc::check("every derivation adds up to its countdown", [] {
        const auto seed = *rc::gen::arbitrary<std::uint64_t>();
        Rows rows(slow::randomGarage(seed, *rc::gen::inRange(0, 40)), seed);
        const book::Book book = rows.book();
        for (const items::Machine* machine : book.machines())
            for (const book::DueLine& line : book.due(machine->id)) {
                const Step root = why(book, line);
                if (const auto wrong = whereItDoesNotAddUp(root))
                    RC_FAIL(*wrong);
                expectLimits(root, line.countdown);
                const auto& down = line.countdown;
                RC_ASSERT(root.figure.has_value() == down.governing.has_value());
                if (down.governing)
                    RC_ASSERT(root.figure->best == book::decidingLimit(line)->left);
            }
    }));
}

}  // namespace
}  // namespace wm::explain
