// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/items/fittings.h"

namespace wm::items {

/// A stretch in which an item sat at one place of a machine, through whatever it was fitted to.
struct Stay {
    ItemId item{};
    MachineId machine{};
    std::string path{};  ///< "engine/piston"
    calendar::Moment from{};
    std::optional<calendar::Moment> to{};  ///< nothing: it still sits there
    friend bool operator==(const Stay&, const Stay&) = default;
};

/// Which item sat where, when: the stays of `items` on any machine, by machine, then path (a parent before
/// what sits in it), then time. At one place they never overlap. Stays of no length are left out.
std::vector<Stay> staysOf(const Fittings& fittings, std::span<const ItemId> items);

}  // namespace wm::items
