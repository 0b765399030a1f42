// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/weekend/plain_order.h"

namespace wm::weekend {

/// An act of a plan that is being made.
struct Node {
    ActKind kind = ActKind::Job;
    std::size_t step = kNoStep;            ///< BreakLoose, Off, On
    std::size_t job = 0;                   ///< Job
    std::string joint{};                   ///< Crack, Torque
    const upkeep::Doing* doing = nullptr;  ///< Do; Run, where a step or task asks for it
    std::size_t rank = 0;                  ///< its place where no edge says otherwise
    bool isPulled = false;                 ///< done as late as what waits for it allows
    bool isOff = false;                    ///< not in this plan: it waits for what is away
    std::vector<std::size_t> after{};      ///< numbers of the acts that come before it
};

/// What binds the acts of one round.
struct RoundTerms {
    bool beginsWarm = false;  ///< the engine is run before anything is opened
    bool closes = true;       ///< the machine is whole at the end
};

/// All acts in an order that keeps every edge, as close to the plain order as that allows.
/// Errors: Cycle "edges" with the acts that wait for each other.
base::Result<std::vector<Node>> orderOfActs(const Teardown& teardown, std::span<const Job> jobs,
                                            const RoundTerms& terms);

}  // namespace wm::weekend
