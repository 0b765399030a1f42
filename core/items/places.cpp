// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/items/places.h"

#include <algorithm>
#include <tuple>

namespace wm::items {

std::vector<Stay> staysOf(const Fittings& fittings, std::span<const ItemId> items) {
    std::vector<Stay> stays;
    for (const ItemId item : items)
        for (const MachineSpell& spell : fittings.machineSpells(item))
            if (!spell.to || *spell.to > spell.from)
                stays.push_back({item, spell.machine, spell.path, spell.from, spell.to});
    std::sort(stays.begin(), stays.end(), [](const Stay& a, const Stay& b) {
        return std::tie(a.machine, a.path, a.from, a.item) < std::tie(b.machine, b.path, b.from, b.item);
    });
    return stays;
}

}  // namespace wm::items
