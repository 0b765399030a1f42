// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The fast reckoning against the day-by-day one, on thousands of random garages.
#include <gtest/gtest.h>

#include "tests/core/made.h"
#include "tests/core/slow/random_garage.h"

namespace wm::slow {

void PrintTo(const Tally& tally, std::ostream* out) {
    *out << tally.low << ".." << tally.best << ".." << (tally.high ? std::to_string(*tally.high) : "")
         << " h/100, weighted " << tally.weightedLow << ".." << tally.weightedBest << ".."
         << (tally.weightedHigh ? std::to_string(*tally.weightedHigh) : "") << ", " << tally.outings
         << " outings, " << tally.starts << " starts, " << tally.washes << "/" << tally.pressureWashes
         << " washes, " << tally.mudDays << " mud days, " << tally.crashes << " crashes";
}

namespace {

Tally tallyOf(const Garage& garage, std::span<const usage::Atom> atoms, calendar::Moment after,
              calendar::Moment upTo) {
    const auto exposure = usage::exposure(atoms, after, upTo);
    const auto weighted = usage::weightedHours(atoms, garage.weights, after, upTo);
    return {.low = exposure.hours.low.count(),
            .best = exposure.hours.best.count(),
            .high = exposure.hours.high ? std::optional(exposure.hours.high->count()) : std::nullopt,
            .weightedLow = weighted.low,
            .weightedBest = weighted.best,
            .weightedHigh = weighted.high,
            .outings = exposure.outings,
            .starts = exposure.starts,
            .washes = exposure.washes,
            .pressureWashes = exposure.pressureWashes,
            .mudDays = exposure.mudDays,
            .crashes = exposure.crashes};
}

// Compares everything in a garage over some periods; false at the first difference.
bool agrees(std::uint64_t seed, int days) {
    const Garage garage = randomGarage(seed, days);
    std::map<MachineId, std::vector<usage::Atom>> atoms;
    for (const auto& [machine, facts] : garage.use)
        atoms[machine] =
            usage::atomsOf(facts, garage.countVan.contains(machine) ? usage::MeterCounts::TransportToo
                                                                    : usage::MeterCounts::Riding);
    const items::Fittings fittings(garage.moves);
    const auto machineAtoms = [&](MachineId machine) { return std::span<const usage::Atom>(atoms[machine]); };
    std::mt19937_64 chance(seed);
    for (int i = 0; i < 3; ++i) {
        const auto after = randomMoment(garage, chance);
        const auto upTo = randomMoment(garage, chance);
        for (const auto& [machine, facts] : garage.use)
            EXPECT_EQ(tallyOf(garage, atoms[machine], after, upTo), ofMachine(garage, machine, after, upTo))
                << "machine " << machine.value() << ", seed " << seed << ", " << days << " days";
        for (const items::Item& item : garage.items)
            EXPECT_EQ(tallyOf(garage, items::atomsOf(item, fittings, machineAtoms), after, upTo),
                      ofItem(garage, item.id, after, upTo))
                << "item " << item.id.value() << ", seed " << seed << ", " << days << " days";
    }
    return !testing::Test::HasFailure();
}

TEST(DayByDayTest, AgreesWithTheFastReckoning) {
    for (std::uint64_t seed = 1; seed <= 200; ++seed)
        ASSERT_TRUE(agrees(seed, static_cast<int>(seed % 30)));
}

TEST(LongDayByDayTest, AgreesWithTheFastReckoningOnThousandsOfGarages) {
    for (std::uint64_t seed = 1'000; seed < 4'000; ++seed)
        ASSERT_TRUE(agrees(seed, static_cast<int>(seed % 60)));
}

}  // namespace
}  // namespace wm::slow
