// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <limits>
#include <map>
#include <optional>
#include <set>
#include <vector>

#include "core/items/fittings.h"
#include "core/usage/exposure.h"

// The same rules as core/usage and core/items, reckoned in the plainest way that could be thought of: from
// morning to evening, day after day, everything looked up by going through all facts. Slow, and written apart
// from the fast one, to be compared with it.
namespace wm::slow {

struct Garage {
    std::map<MachineId, usage::UseFacts> use;
    std::set<MachineId> countVan;  ///< machines whose hour meter runs in the van as well
    std::vector<items::Move> moves;
    std::vector<items::Item> items;
    std::vector<usage::HourWeight> weights;  ///< of a task, for the weighted hours
    calendar::Date first{};
    calendar::Date last{};
};

/// What went through a machine or an item after one moment and up to another, stated past left out.
struct Tally {
    std::int64_t low = 0;
    std::int64_t best = 0;
    std::optional<std::int64_t> high = 0;
    std::int64_t weightedLow = 0;  ///< hundredths of an hour x permille
    std::int64_t weightedBest = 0;
    std::optional<std::int64_t> weightedHigh = 0;
    std::int64_t outings = 0;
    std::int64_t starts = 0;
    std::int64_t washes = 0;
    std::int64_t pressureWashes = 0;
    std::int64_t mudDays = 0;
    std::int64_t crashes = 0;
    friend bool operator==(const Tally&, const Tally&) = default;
};

/// Where a stretch of time ends. Of what was told of this very moment, that which was told up to `told` lies
/// before it: all of it, unless somebody asks for the order of telling.
struct Cut {
    calendar::Moment at{};
    base::Entered told = std::numeric_limits<base::Entered>::max();

    Cut(calendar::Moment moment) : at(moment) {}  // NOLINT: a moment is a cut behind all of it
    Cut(calendar::Moment moment, base::Entered upTo) : at(moment), told(upTo) {}
    friend auto operator<=>(const Cut&, const Cut&) = default;
};

Tally ofMachine(const Garage& garage, MachineId machine, Cut after, Cut upTo);
/// What was ridden and washed in the part of the day in which an item was moved came before the move.
Tally ofItem(const Garage& garage, ItemId item, Cut after, Cut upTo);

}  // namespace wm::slow
