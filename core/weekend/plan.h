// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/weekend/rows.h"

namespace wm::weekend {

/// A job that was picked: what the plan needs of it.
struct Job {
    std::optional<TaskId> task{};
    std::optional<SnagId> snag{};
    std::string name{};
    units::Minutes minutes{};
    std::vector<std::string> steps{};  ///< codes of access steps that must be off
    upkeep::BodyState bodyState = upkeep::BodyState::Any;
    bool safety = false;
};

enum class ActKind : std::uint8_t { BreakLoose, Off, Job, On, SafeStop };

/// One line of the working order. Times are minutes from the start of the work.
struct Act {
    ActKind kind = ActKind::Job;
    std::string step{};                ///< code of the access step (BreakLoose, Off, On)
    std::optional<std::size_t> job{};  ///< index into the jobs
    std::string text{};
    units::Minutes starts{};
    units::Minutes minutes{};
};

struct Plan {
    std::vector<Act> acts{};
    units::Minutes work{};              ///< all of it, shared access counted once
    units::Minutes alone{};             ///< what the jobs would take one by one
    std::vector<std::string> opened{};  ///< access steps in the order in which they come off
};

/// Working order for one machine: break loose what must be cracked first, take off by need, do each job when
/// it is reached (cold before warm work), refit in reverse; a SafeStop stands wherever the machine is whole
/// again or a stage is closed. Errors: Unknown (a step that is not there), Cycle (steps that need each
/// other).
base::Result<Plan> planWork(std::span<const StepVersion* const> steps, std::span<const Job> jobs);

/// The access steps that `codes` need, themselves included, each once, needs before the steps that need them.
base::Result<std::vector<const StepVersion*>> opening(std::span<const StepVersion* const> steps,
                                                      std::span<const std::string> codes);

}  // namespace wm::weekend
