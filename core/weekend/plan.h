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
    bool sendsOut = false;  ///< what it is on goes to a workshop, and nothing takes its place
};

/// Run: the engine is run until it is warm. Wait: hands off until it is cold again.
enum class ActKind : std::uint8_t { BreakLoose, Off, Job, On, SafeStop, Run, Wait };

/// One line of the working order. Times are minutes from the start of the work; breaking loose takes none of
/// its own, it is part of the step's minutes.
struct Act {
    ActKind kind = ActKind::Job;
    std::string step{};                ///< code of the access step (BreakLoose, Off, On)
    std::optional<std::size_t> job{};  ///< index into the jobs
    std::string text{};  ///< what to crack or to do, the name of step or job, why it is safe to stop here
    units::Minutes starts{};
    units::Minutes minutes{};
};

struct Plan {
    std::vector<Act> acts;
    units::Minutes work{};            ///< all of it, shared access counted once, waiting not counted
    units::Minutes waiting{};         ///< hands off
    units::Minutes alone{};           ///< what the jobs would take one by one
    std::vector<std::string> opened;  ///< access steps in the order in which they come off
};

/// What the engine needs to warm up and to cool down. From memory of the trade, no source.
struct EngineTimes {
    units::Minutes toWarm{5};
    units::Minutes toCold{240};
};

/// Working order for one machine. What every other step stands on comes off first; the rest falls into stages
/// that share nothing else and are opened and closed one after the other, in the order of the jobs. In a
/// stage each job's steps come off by need, the job is done as soon as it is reached, and the refit is the
/// teardown backwards. What must be cracked loose is cracked as late as its `looseBefore` allows.
/// The engine is never run while anything is off: work on a warm engine has an opening of its own, when the
/// rest is closed again. Where the rest does not close, because something is sent out, it comes first, and
/// what wants the engine cold waits. What is open for a job that sends something out stays open: nobody
/// refits what is away. A SafeStop stands after each stage that is fully closed and where all is back on; it
/// names what is still off or loose. It calls the machine whole only if `isElseWhole`: nothing else is off it
/// or hand-tight.
/// Errors: Unknown (a step that is not there), Cycle (steps that need each other), each with the code.
/// A `looseBefore` that names no known step binds nothing.
base::Result<Plan> planWork(std::span<const StepVersion* const> steps, std::span<const Job> jobs,
                            bool isElseWhole = true, const EngineTimes& times = {});

/// The access steps that `codes` need, themselves included, each once, needs before the steps that need them.
/// Errors as planWork.
base::Result<std::vector<const StepVersion*>> opening(std::span<const StepVersion* const> steps,
                                                      std::span<const std::string> codes);

}  // namespace wm::weekend
