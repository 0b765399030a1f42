// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// All standings of a garage, from a loaded ledger; and how the time grows with the facts.
#include <benchmark/benchmark.h>

#include <memory>

#include "core/book/book.h"
#include "core/verbs/verbs.h"
#include "tests/bench/generated_garage.h"

namespace wm::bench {
namespace {

std::shared_ptr<const picture::Ledger> ledgerOf(int years, int machines = 12) {
    return std::make_shared<picture::Ledger>(
        generatedGarage({.machines = machines, .tasks = 80, .years = years}));
}

std::size_t standings(const std::shared_ptr<const picture::Ledger>& ledger) {
    const book::Book book(ledger, *calendar::makeDate(kLastYear, 1, 1));
    std::size_t lines = 0;
    for (const items::Machine* machine : book.machines())
        lines += book.due(machine->id).size();
    return lines;
}

// Growth, by machines and years: 1 x 2, 2 x 12 and 12 x 20 are about 1,000, 10,000 and 100,000 facts; 12
// machines over 2 to 20 years show what the facts cost beside the 960 tasks.
void allStandings(benchmark::State& state) {
    const auto ledger = ledgerOf(static_cast<int>(state.range(1)), static_cast<int>(state.range(0)));
    for (auto _ : state)
        benchmark::DoNotOptimize(standings(ledger));
    state.counters["facts"] = static_cast<double>(ledger->nextEntered() - 1);
}
BENCHMARK(allStandings)
    ->Args({1, 2})
    ->Args({2, 12})
    ->Args({12, 2})
    ->Args({12, 5})
    ->Args({12, 10})
    ->Args({12, 20})
    ->Unit(benchmark::kMillisecond);

// The windows of one machine's 80 tasks. Beside it: outlook_peer.py, the same by plain simulation.
void windowsOfAMachine(benchmark::State& state) {
    outlook::Ahead ahead;
    ahead.today = *calendar::makeDate(kLastYear, 1, 1);
    ahead.habitOutingsPerWeek = 1.2;
    ahead.weeksSeen = 20;
    ahead.practiceHours = {1.8, 0.4, 24};
    ahead.of(usage::Piece::Washes) = {0.8, 30};
    for (auto _ : state) {
        const outlook::Odds odds(ahead);
        for (std::int64_t task = 0; task < 80; ++task) {
            outlook::DuePoint point;
            point.needs.push_back({upkeep::Counter::Hours, 500 + 50 * task});
            if (task % 3 == 0)
                point.needs.push_back({upkeep::Counter::Washes, 8 + task % 7});
            benchmark::DoNotOptimize(odds.windowOf(point).likely);
        }
    }
}
BENCHMARK(windowsOfAMachine)->Unit(benchmark::kMillisecond);

// The joint chances of every machine, beside its standings.
void allChances(benchmark::State& state) {
    const auto ledger = ledgerOf(2);
    for (auto _ : state) {
        const book::Book book(ledger, *calendar::makeDate(kLastYear, 1, 1));
        for (const items::Machine* machine : book.machines())
            benchmark::DoNotOptimize(book.chances(machine->id).clear);
    }
}
BENCHMARK(allChances)->Unit(benchmark::kMillisecond);

void buildLedger(benchmark::State& state) {
    const auto rows = generatedGarage({});
    for (auto _ : state)
        benchmark::DoNotOptimize(picture::Ledger(rows).nextEntered());
}
BENCHMARK(buildLedger)->Unit(benchmark::kMillisecond);

// One fact of today more, beside its commit: the next picture, the next book, and every standing in it, of 12
// machines over 20 years. `about` makes the row of a number.
template <class Make>
void oneMore(benchmark::State& state, const Make& about) {
    const calendar::Date today = *calendar::makeDate(kLastYear, 1, 1);
    auto ledger = ledgerOf(20);
    auto book = std::make_shared<const book::Book>(ledger, today);
    const auto lookAtAll = [](const book::Book& at) {
        for (const items::Machine* machine : at.machines())
            benchmark::DoNotOptimize(at.due(machine->id).size());
    };
    lookAtAll(*book);
    std::int64_t id = 9'000'000'000;
    for (auto _ : state) {
        auto next = std::make_shared<const picture::Ledger>(
            ledger->with({"one more", {about(*ledger, ++id, ledger->nextEntered())}}));
        auto after = std::make_shared<const book::Book>(next, today, *book);
        lookAtAll(*after);
        ledger = std::move(next);
        book = std::move(after);
    }
}

void oneWashMore(benchmark::State& state) {
    oneMore(state, [](const picture::Ledger& ledger, std::int64_t id, base::Entered entered) -> picture::Row {
        return usage::Wash{.id = WashId(id),
                           .entered = entered,
                           .machine = ledger.all<items::Machine>().front().id,
                           .date = *calendar::makeDate(kLastYear, 1, 1)};
    });
}
BENCHMARK(oneWashMore)->Unit(benchmark::kMillisecond);

void oneJobMore(benchmark::State& state) {
    oneMore(state, [](const picture::Ledger& ledger, std::int64_t id, base::Entered entered) -> picture::Row {
        upkeep::Record record = ledger.all<upkeep::Record>().back();
        record.id = RecordId(id);
        record.entered = entered;
        record.date = *calendar::makeDate(kLastYear, 1, 1);
        return record;
    });
}
BENCHMARK(oneJobMore)->Unit(benchmark::kMillisecond);

// The same with a ride that had been forgotten for a year.
void oneBackDatedRide(benchmark::State& state) {
    oneMore(state, [](const picture::Ledger& ledger, std::int64_t id, base::Entered entered) -> picture::Row {
        return usage::Outing{.id = OutingId(id),
                             .entered = entered,
                             .machine = ledger.all<items::Machine>().front().id,
                             .date = *calendar::makeDate(kLastYear - 1, 1, 1),
                             .hours = units::Hours(100)};
    });
}
BENCHMARK(oneBackDatedRide)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace wm::bench
