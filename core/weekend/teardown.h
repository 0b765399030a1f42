// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/weekend/plan.h"

namespace wm::weekend {

/// What a set of jobs opens, by number: steps are numbered in need order, jobs as they were given.
struct Teardown {
    std::vector<const StepVersion*> steps;
    std::vector<std::vector<bool>> under;         ///< under[a][b]: b must be off before a; never itself
    std::vector<std::vector<std::size_t>> pulls;  ///< what comes off before a step: its needs, and what lies
                                                  ///< over a fastener that has to be cracked earlier
    std::vector<std::vector<std::size_t>> keeps;  ///< steps that must be on while this one is cracked loose
    std::vector<bool> first;  ///< comes off before all else: what wants a warm engine, and what lies over it
    std::vector<std::vector<bool>> reach;  ///< reach[job][step]: the step must be off for the job

    /// Errors: Unknown, Cycle.
    static base::Result<Teardown> of(std::span<const StepVersion* const> steps, std::span<const Job> jobs);
};

/// A part of the machine that is opened and closed by itself.
struct Stage {
    std::vector<std::size_t> steps;
    std::vector<std::size_t> jobs;  ///< in the order given
};

/// The trunk: what comes off first, then steps on which all others stand, in order, with the jobs that need
/// nothing more. Then the
/// stages, which share nothing but the trunk, in the order of the jobs.
struct Stages {
    Stage trunk;
    std::vector<Stage> stages;
};

Stages splitIntoStages(const Teardown& teardown, std::span<const Job> jobs);

}  // namespace wm::weekend
