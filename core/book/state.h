// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/book/book.h"

namespace wm::book {

/// A position of a machine from which something was taken and where nothing sits now.
struct Gap {
    std::string position{};  ///< "engine", "engine/piston"
    ItemId item{};           ///< what sat there last
    calendar::Date since{};
    bool isAway = false;      ///< that is at a workshop
    std::string where{};      ///< at which, as the move was noted
    bool isDoubtful = false;  ///< nobody can say whether the machine needs it
};

/// What keeps a machine from being whole on the evening of the book's day. A position that nobody ever
/// tracked is taken to be filled; one that a machine can be ridden without is no gap. Below a gap nothing is
/// missed.
struct State {
    std::vector<Gap> gaps{};
    std::vector<OpenJoint> handTight{};
    [[nodiscard]] bool isWhole() const { return gaps.empty() && handTight.empty(); }
};

State stateOf(const Book& book, MachineId machine);

/// True if the machine is whole once these jobs are done: what is hand-tight now is opened by them, and
/// torqued as they are closed.
bool isWholeAfter(const Book& book, MachineId machine, const std::vector<weekend::Job>& jobs);

/// The gaps that there were after the riding of a day.
std::vector<Gap> gapsOn(const Book& book, MachineId machine, calendar::Date day);

}  // namespace wm::book
