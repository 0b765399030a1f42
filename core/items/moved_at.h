// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/items/rows.h"

namespace wm::items {

/// A move as one position of a machine saw it: something went from there, or came there.
struct MovedAt {
    const Move* move = nullptr;
    MachineId machine{};
    std::string path{};  ///< "engine/piston", as it was then
    bool came = false;   ///< fitted there; else it went from there
    /// The first fitting of something that has a past, where nobody had tracked anything: it was there.
    bool isTracking = false;
    /// Off and on again at the same place on one day, with nothing else in between: was it work?
    bool isOutAndBack = false;
};

/// What the moves up to a day did at the positions of all machines, in order: by day, by part of the day, as
/// they were entered. What an item that sits in another one does is seen by the machine that carries both.
std::vector<MovedAt> movedAt(std::span<const Move> moves, std::span<const Item> items, calendar::Date on);

}  // namespace wm::items
