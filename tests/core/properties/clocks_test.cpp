// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold in every garage, however careless.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <numeric>

#include "core/usage/metering.h"
#include "tests/core/slow/random_garage.h"

namespace wm::slow {
namespace {

using calendar::Moment;
using usage::Atom;
using usage::Exposure;

// Runs a property and hands its verdict to the test.
template <class Property>
void holds(const char* what, Property&& property) {
    EXPECT_TRUE(rc::check(what, std::forward<Property>(property)));
}

struct World {
    Garage garage;
    std::map<MachineId, std::vector<Atom>> machineAtoms{};
    items::Fittings fittings;
    std::vector<Moment> cuts{};  // in order

    explicit World(Garage made) : garage(std::move(made)), fittings(garage.moves) {
        for (const auto& [machine, facts] : garage.use)
            machineAtoms[machine] = usage::atomsOf(facts);
    }
    std::vector<Atom> atoms(const items::Item& item) {
        return items::atomsOf(item, fittings, [this](MachineId machine) {
            return std::span<const Atom>(machineAtoms[machine]);
        });
    }
    // The lives of all machines and items, by their atoms.
    std::vector<std::vector<Atom>> lives() {
        std::vector<std::vector<Atom>> all;
        for (const auto& [machine, atoms] : machineAtoms)
            all.push_back(atoms);
        for (const items::Item& item : garage.items)
            all.push_back(atoms(item));
        return all;
    }
};

World anyWorld() {
    const auto seed = *rc::gen::arbitrary<std::uint64_t>();
    World world(randomGarage(seed, *rc::gen::inRange(0, 40)));
    std::mt19937_64 chance(seed);
    for (int i = 0; i < 3; ++i)
        world.cuts.push_back(randomMoment(world.garage, chance));
    std::sort(world.cuts.begin(), world.cuts.end());
    return world;
}

std::int64_t bestOf(std::span<const Atom> atoms, std::optional<Moment> after, Moment upTo) {
    return usage::exposure(atoms, after, upTo).hours.best.count();
}

TEST(ClockPropertiesTest, ExposureIsAdditiveOverTime) {
    holds("what went before a moment and after it is what went in all", [] {
        World world = anyWorld();
        for (const auto& atoms : world.lives()) {
            const Exposure whole = usage::exposure(atoms, world.cuts[0], world.cuts[2]);
            Exposure sum = usage::exposure(atoms, world.cuts[0], world.cuts[1]);
            sum += usage::exposure(atoms, world.cuts[1], world.cuts[2]);
            RC_ASSERT(sum.hours.best == whole.hours.best);
            RC_ASSERT(sum.hours.low <= whole.hours.low);
            RC_ASSERT(!sum.hours.high || (whole.hours.high && *sum.hours.high >= *whole.hours.high));
            sum.hours = whole.hours;
            RC_ASSERT(sum == whole);
        }
    });
}

TEST(ClockPropertiesTest, BracketsAreOrdered) {
    holds("low <= best <= high, for every atom and every sum", [] {
        World world = anyWorld();
        const auto ordered = [](const usage::HoursBracket& hours) {
            return units::Hours{0} <= hours.low && hours.low <= hours.best &&
                   (!hours.high || hours.best <= *hours.high);
        };
        for (const auto& atoms : world.lives()) {
            for (const Atom& atom : atoms)
                RC_ASSERT(ordered(atom.hours));
            RC_ASSERT(ordered(usage::exposure(atoms, world.cuts[0], world.cuts[1]).hours));
            RC_ASSERT(ordered(usage::exposure(atoms, std::nullopt, world.cuts[2]).hours));
        }
    });
}

// Sum over the spells of all items in one position, clipped to the period, and the empty time between.
std::pair<std::int64_t, std::int64_t> gainAndEmpty(World& world, MachineId machine,
                                                   const std::string& position, Moment after, Moment upTo) {
    std::int64_t gain = 0;
    std::map<Moment, Moment> fitted;
    for (const items::Item& item : world.garage.items) {
        const auto own = world.atoms(item);
        for (const auto& spell : world.fittings.machineSpells(item.id)) {
            const Moment from = std::max(spell.from, after);
            const Moment to = std::min(spell.to.value_or(upTo), upTo);
            if (spell.machine != machine || spell.path != position || from >= to)
                continue;
            gain += bestOf(own, from, to);
            fitted[from] = to;
        }
    }
    std::int64_t empty = 0;
    Moment at = after;
    for (const auto& [from, to] : fitted) {
        empty += bestOf(world.machineAtoms[machine], at, from);
        at = to;
    }
    return {gain, empty + bestOf(world.machineAtoms[machine], at, upTo)};
}

TEST(ClockPropertiesTest, WhatAPositionGainsItsMachineRan) {
    holds("fitted items' gain + empty time = the machine's gain", [] {
        World world = anyWorld();
        const Moment after = world.cuts[0];
        const Moment upTo = world.cuts[2];
        for (const MachineId machine : {MachineId{101}, MachineId{102}})
            for (const char* position : {"engine", "engine/piston", "front wheel", "rear wheel"}) {
                const auto [gain, empty] = gainAndEmpty(world, machine, position, after, upTo);
                RC_ASSERT(gain + empty == bestOf(world.machineAtoms[machine], after, upTo));
            }
    });
}

template <class Fact>
void strikeAndReenter(std::vector<Fact>& facts, std::mt19937_64& chance, std::int64_t& last) {
    if (facts.empty())
        return;
    const auto at = facts.begin() + static_cast<std::ptrdiff_t>(chance() % facts.size());
    Fact again = *at;
    facts.erase(at);
    again.id = decltype(again.id){++last};
    again.entered = last;
    facts.push_back(again);
}

TEST(ClockPropertiesTest, StrikingAndReenteringChangesNothing) {
    holds("a fact that is struck and entered again, later and last, leaves every figure as it was", [] {
        World world = anyWorld();
        Garage again = world.garage;
        std::mt19937_64 chance(*rc::gen::arbitrary<std::uint64_t>());
        std::int64_t last = 1'000'000;
        for (auto& [machine, facts] : again.use) {
            strikeAndReenter(facts.outings, chance, last);
            strikeAndReenter(facts.hourReadings, chance, last);
            strikeAndReenter(facts.washes, chance, last);
            strikeAndReenter(facts.crashes, chance, last);
        }
        std::shuffle(again.moves.begin(), again.moves.end(), chance);
        World other(again);
        const auto before = world.lives();
        const auto after = other.lives();
        for (std::size_t i = 0; i < before.size(); ++i)
            for (calendar::Date day = again.first; day <= again.last; day = day.plusDays(1)) {
                const Moment evening{day, calendar::DayPart::AfterRiding};
                RC_ASSERT(usage::exposure(before[i], std::nullopt, evening) ==
                          usage::exposure(after[i], std::nullopt, evening));
            }
    });
}

TEST(ClockPropertiesTest, TheMeterIsTheTruth) {
    holds("between two readings of a meter that counted on, the machine ran their difference", [] {
        World world = anyWorld();
        for (const auto& [machine, facts] : world.garage.use) {
            const auto figures = usage::figuresOf(facts.hourReadings);
            bool stands = false;
            for (std::size_t i = 0; i + 1 < figures.size(); ++i) {
                stands = usage::standsAfter(stands, figures[i]);
                const auto ran = usage::ranBetween(figures[i], figures[i + 1]);
                if (stands || !ran)
                    continue;
                const units::Hours difference{*ran};
                RC_ASSERT(
                    usage::exposure(world.machineAtoms[machine], figures[i].at, figures[i + 1].at).hours ==
                    usage::HoursBracket::exactly(difference));
            }
        }
    });
}

TEST(ClockPropertiesTest, SharesAddUpAndAreNearTheirQuota) {
    holds("shares are whole, within one of their quota, and sum to the whole", [] {
        const auto weights = *rc::gen::nonEmpty(
            rc::gen::container<std::vector<std::int64_t>>(rc::gen::inRange<std::int64_t>(0, 1'000'000)));
        const auto whole = *rc::gen::inRange<std::int64_t>(0, 1'000'000'000);
        const auto shares = usage::sharesOf(whole, weights);
        RC_ASSERT(std::accumulate(shares.begin(), shares.end(), std::int64_t{0}) == whole);
        const auto sum = std::accumulate(weights.begin(), weights.end(), std::int64_t{0});
        for (std::size_t i = 0; i < weights.size() && sum > 0; ++i)
            RC_ASSERT(std::abs(shares[i] * sum - whole * weights[i]) < sum);
    });
}

}  // namespace
}  // namespace wm::slow
