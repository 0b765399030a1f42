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
    const upkeep::TaskVersion* definition = nullptr;  ///< its joints, doings and edges; nullptr: it has none
};

/// Run: the engine is run. Wait: hands off until it is cold again. Crack, Torque: of a joint of which an edge
/// speaks. Do: a doing of a step or a task.
enum class ActKind : std::uint8_t { BreakLoose, Off, Job, On, SafeStop, Run, Wait, Crack, Do, Torque };

/// What stands where one stops: names of steps, joints and jobs, as they are on the machine.
struct Stop {
    std::vector<std::string> closed{};   ///< steps that are back on since the last stop, the latest first
    std::vector<std::string> off{};      ///< steps that are off, in the order in which they came off
    std::vector<std::string> cracked{};  ///< what is cracked loose of steps that are still on
    std::vector<std::string> loose{};    ///< joints that are cracked, or in again and not torqued yet
    std::vector<std::string> left{};     ///< jobs that wait for what is away
    bool isElseWhole = true;             ///< nothing else is off the machine or hand-tight
    bool cures = false;                  ///< thread-locker was used: a matter of riding

    [[nodiscard]] bool isTight() const { return cracked.empty() && loose.empty(); }
    [[nodiscard]] bool isClosed() const { return off.empty() && isTight() && left.empty(); }
};

/// One line of the working order. Times are minutes from the start of the work; breaking loose takes none of
/// its own, it is part of the step's minutes.
struct Act {
    ActKind kind = ActKind::Job;
    std::string step{};                ///< code of the access step (BreakLoose, Off, On)
    std::optional<std::size_t> job{};  ///< index into the jobs
    std::string joint{};               ///< code (Crack, Torque)
    std::string doing{};               ///< code (Do, and a Run that a step or task asks for)
    /// Codes of the joints that this act torques, in their order (On, Job, Torque). In an opening each stands
    /// once: where it is closed for the last time.
    std::vector<std::string> torques{};
    std::string text{};  ///< what to crack or to do, the name of step or job; in English, what is said of a
                         ///< stop, a wait, a run that no step asks for (plan_words.h)
    Stop stop{};         ///< SafeStop; of a Run only whether the machine is else whole
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

/// A joint as the plan speaks of it.
struct JointCard {
    std::string code{};
    std::string name{};
    std::string held{};  ///< by what against the wrench
    bool cures = false;  ///< it is locked with something that has to cure before it is ridden
};

/// What a plan is made under.
struct PlanTerms {
    bool isElseWhole = true;  ///< nothing else is off the machine or hand-tight
    std::vector<JointCard> joints{};
    EngineTimes times{};
};

/// Working order for one machine. What every other step stands on comes off first; the rest falls into stages
/// that share nothing else and are opened and closed one after the other, in the order of the jobs. In a
/// stage each job's steps come off by need, the job is done as soon as it is reached, and the refit is the
/// teardown backwards. What must be cracked loose is cracked as late as its `looseBefore` allows. All edges
/// of the steps and tasks hold (core/upkeep/deeds.h); where they ask for another order than this one, what
/// has to come earlier is pulled forward, just before what waits for it. The engine is never run while
/// anything is off. Work on a warm engine has an opening of its own, when the rest is closed again. It comes
/// first where a step that wants a warm engine (oil drained) lies under other work; what wants the engine
/// cold then waits until it is. Doings that run the engine come when all is closed, and not at all where it
/// does not close. What is open for a job that sends something out is opened when the rest is done, and stays
/// open: nobody refits what is away. What would have to wait for that (a torque with the weight on) is left
/// out and named as loose; a job that comes last of all is left out and named, where it waits for what is
/// away. A job of the plan stands for the doings of its code. A SafeStop stands after each stage that is
/// fully closed and where all is back on; it names what is still off or loose, and calls the machine whole
/// only if it is else whole. Errors: Unknown "step", Cycle "step" (steps that need each other), each with the
/// code; Cycle "edges" with the acts that wait for each other, each before the next. What names no known
/// step, joint, doing or task binds nothing.
base::Result<Plan> planWork(std::span<const StepVersion* const> steps, std::span<const Job> jobs,
                            const PlanTerms& terms = {});

/// The access steps that `codes` need, themselves included, each once, needs before the steps that need them.
/// Errors as planWork.
base::Result<std::vector<const StepVersion*>> opening(std::span<const StepVersion* const> steps,
                                                      std::span<const std::string> codes);

}  // namespace wm::weekend
