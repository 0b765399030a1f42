// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "core/weekend/plan.h"
#include "core/weekend/teardown.h"

namespace wm::weekend {

inline constexpr auto kNoStep = static_cast<std::size_t>(-1);

/// An act that speaks of steps by number: Off, Job or On.
struct Move {
    ActKind kind = ActKind::Off;
    std::size_t step = kNoStep;
    std::size_t job = 0;
};

/// Steps and jobs by need alone: stage after stage, each job as soon as it is reached, the refit backwards.
/// What is open for a job that sends something out stays open.
std::vector<Move> plainOrder(const Teardown& teardown, std::span<const Job> jobs);

}  // namespace wm::weekend
