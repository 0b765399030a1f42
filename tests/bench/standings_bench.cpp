// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// All standings of a garage, from a loaded ledger; and how the time grows with the facts.
#include <benchmark/benchmark.h>

#include <memory>

#include "core/ledger/book.h"
#include "core/ledger/verbs.h"
#include "tests/bench/generated_garage.h"

namespace wm::bench {
namespace {

std::shared_ptr<const ledger::Ledger> ledgerOf(int years) {
    return std::make_shared<ledger::Ledger>(generatedGarage({.machines = 12, .tasks = 80, .years = years}));
}

std::size_t standings(const std::shared_ptr<const ledger::Ledger>& ledger) {
    const ledger::Book book(ledger, *calendar::makeDate(kLastYear, 1, 1));
    std::size_t lines = 0;
    for (const items::Machine* machine : book.machines())
        lines += book.due(machine->id).size();
    return lines;
}

// Growth: 2, 20 years are about 10,000 and 100,000 facts.
void allStandings(benchmark::State& state) {
    const auto ledger = ledgerOf(static_cast<int>(state.range(0)));
    for (auto _ : state)
        benchmark::DoNotOptimize(standings(ledger));
    state.counters["facts"] = static_cast<double>(ledger->nextEntered() - 1);
}
BENCHMARK(allStandings)->Arg(2)->Arg(5)->Arg(10)->Arg(20)->Unit(benchmark::kMillisecond);

// The windows of one machine's 80 tasks. Beside it: outlook_peer.py, the same by plain simulation.
void windowsOfAMachine(benchmark::State& state) {
    outlook::Ahead ahead;
    ahead.today = *calendar::makeDate(kLastYear, 1, 1);
    ahead.habitOutingsPerWeek = 1.2;
    ahead.weeksSeen = 20;
    ahead.practiceHours = {1.8, 0.4, 24};
    ahead.washes = {0.8, 30};
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
        const ledger::Book book(ledger, *calendar::makeDate(kLastYear, 1, 1));
        for (const items::Machine* machine : book.machines())
            benchmark::DoNotOptimize(book.chances(machine->id).clear);
    }
}
BENCHMARK(allChances)->Unit(benchmark::kMillisecond);

void buildLedger(benchmark::State& state) {
    const auto rows = generatedGarage({});
    for (auto _ : state)
        benchmark::DoNotOptimize(ledger::Ledger(rows).nextEntered());
}
BENCHMARK(buildLedger)->Unit(benchmark::kMillisecond);

void oneFactMore(benchmark::State& state) {
    const auto ledger = ledgerOf(20);
    const MachineId machine = ledger->all<items::Machine>().front().id;
    const ledger::Change change{"logged a wash",
                                {usage::Wash{.id = WashId(9'000'000'000),
                                             .entered = ledger->nextEntered(),
                                             .machine = machine,
                                             .date = *calendar::makeDate(kLastYear, 1, 1)}}};
    for (auto _ : state)
        benchmark::DoNotOptimize(ledger->with(change).nextEntered());
}
BENCHMARK(oneFactMore)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace wm::bench
