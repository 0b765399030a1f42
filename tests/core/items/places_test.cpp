// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/items/places.h"

#include <gtest/gtest.h>

#include <map>

#include "tests/core/items/cast.h"
#include "tests/core/made.h"
#include "tests/core/slow/random_garage.h"

namespace wm::items {
namespace {

using made::evening;
using made::Made;

constexpr ItemId kOtherEngine{3};

// The piston goes with its engine from the red machine to the blue one; a spare takes the empty place.
TEST(PlacesTest, SaysWhichItemSatWhereWhen) {
    Made make;
    const std::vector<Move> moves{make.fit(kEngine, kRed, "engine", evening("2026-03-01")),
                                  make.fit(kPiston, kEngine, "piston", evening("2026-03-05")),
                                  make.move(kEngine, MoveKind::Removed, evening("2026-04-01")),
                                  make.fit(kOtherEngine, kRed, "engine", evening("2026-04-02")),
                                  make.fit(kEngine, kBlue, "engine", evening("2026-04-03"))};
    const std::vector<ItemId> items{kEngine, kPiston, kOtherEngine};
    const std::vector<Stay> expected{
        {kEngine, kRed, "engine", evening("2026-03-01"), evening("2026-04-01")},
        {kOtherEngine, kRed, "engine", evening("2026-04-02"), std::nullopt},
        {kPiston, kRed, "engine/piston", evening("2026-03-05"), evening("2026-04-01")},
        {kEngine, kBlue, "engine", evening("2026-04-03"), std::nullopt},
        {kPiston, kBlue, "engine/piston", evening("2026-04-03"), std::nullopt}};
    EXPECT_EQ(staysOf(Fittings(moves), items), expected);
    EXPECT_TRUE(staysOf(Fittings({}), items).empty());
}

// Asked moment by moment, the fittings name the same item.
TEST(PlacesTest, AgreesWithAskingEachDay) {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        const slow::Garage garage = slow::randomGarage(seed, 40);
        std::vector<ItemId> items;
        for (const Item& item : garage.items)
            items.push_back(item.id);
        const Fittings fittings(garage.moves);
        const std::vector<Stay> stays = staysOf(fittings, items);
        std::mt19937_64 chance(seed);
        for (int probe = 0; probe < 40; ++probe) {
            const calendar::Moment when = slow::randomMoment(garage, chance);
            std::map<std::pair<MachineId, std::string>, std::size_t> found;
            for (const Stay& stay : stays) {
                if (when < stay.from || (stay.to && when >= *stay.to))
                    continue;
                EXPECT_EQ(++found[std::pair(stay.machine, stay.path)], 1U) << "two items at one place";
                EXPECT_EQ(fittings.at(stay.machine, stay.path, when), stay.item);
            }
            for (const ItemId item : items)
                for (const MachineSpell& spell : fittings.machineSpells(item))
                    if (spell.from <= when && (!spell.to || when < *spell.to)) {
                        EXPECT_EQ(found.count(std::pair(spell.machine, spell.path)), 1U);
                    }
        }
    }
}

}  // namespace
}  // namespace wm::items
