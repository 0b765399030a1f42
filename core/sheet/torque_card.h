// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/book/book.h"
#include "core/sheet/speech.h"

namespace wm::sheet {

/// One joint on the card for the wall.
struct CardLine {
    std::string joint{};   ///< "Rear axle nut"
    std::string thread{};  ///< "4 x M8x1.25", "M20x1.5"
    std::string torque{};  ///< as printed: "110 N·m"
    std::string metric{};  ///< the same in N·m, if it was printed in another unit
    bool confirmed = false;
    std::string how{};   ///< stages, thread condition, locking, what is renewed, left-hand, order
    std::string tool{};  ///< the tool of the drawer that serves it best; empty if none reaches it
};

struct CardGroup {
    std::string title{};  ///< "Wheels and axles"
    std::vector<CardLine> lines{};
};

/// Every figure of one machine, for the wall.
struct TorqueCard {
    std::string machine{};
    std::string model{};  ///< "Fenwright Heron 250 R, 2024"; empty if the card doesn't say
    std::string date{};
    std::vector<CardGroup> groups{};
    std::size_t unconfirmed = 0;
    std::size_t blank = 0;  ///< joints that have no figure yet; they are not on the card
    bool hasDrawer = false;
};

/// Errors: Unknown "machine"; NothingToDo "torque" if no joint of it has a figure.
base::Result<TorqueCard> torqueCard(const book::Book& book, MachineId machine, const Speech& speech = {});

}  // namespace wm::sheet
