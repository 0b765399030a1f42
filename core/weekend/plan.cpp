// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/plan.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "core/weekend/step_words.h"
#include "core/weekend/teardown.h"

namespace wm::weekend {

namespace {

constexpr auto kNoStep = static_cast<std::size_t>(-1);

// An act that still speaks of steps by number.
struct Move {
    ActKind kind;
    std::size_t step = kNoStep;
    std::size_t job = 0;
};

// Opens, works and closes one stage after the other.
class Worker {
  public:
    Worker(const Teardown& teardown, std::span<const Job> jobs)
        : t_(teardown),
          jobs_(jobs),
          off_(t_.steps.size(), false),
          staysOff_(t_.steps.size(), false),
          done_(jobs.size(), false) {
        for (std::size_t job = 0; job < jobs.size(); ++job)
            for (std::size_t step = 0; step < t_.steps.size(); ++step)
                if (jobs[job].sendsOut && t_.reach[job][step])
                    staysOff_[step] = true;
    }

    std::vector<Move> run(const Stages& stages) {
        doReached(stages.trunk.jobs);
        for (const std::size_t step : stages.trunk.steps)
            takeOff(step, stages.trunk.jobs);
        for (const Stage& stage : stages.stages) {
            work(stage);
            if (&stage != &stages.stages.back())
                moves_.push_back({ActKind::SafeStop});
        }
        refit(stages.trunk.steps, stages.trunk.jobs);
        doRest(stages.trunk.jobs);
        if (!moves_.empty())
            moves_.push_back({ActKind::SafeStop});
        return std::move(moves_);
    }

  private:
    [[nodiscard]] bool isWarm(std::size_t job) const {
        return jobs_[job].bodyState == upkeep::BodyState::Warm;
    }

    void work(const Stage& stage) {
        const std::size_t from = order_.size();
        for (const std::size_t job : stage.jobs)
            if (!isWarm(job))
                openFor(job, stage.jobs);
        refit(offSince(from), stage.jobs);
        doRest(stage.jobs);
    }

    void openFor(std::size_t job, const std::vector<std::size_t>& jobs) {
        for (std::size_t step = 0; step < t_.steps.size(); ++step)
            if (t_.reach[job][step])
                takeOff(step, jobs);
    }

    [[nodiscard]] std::vector<std::size_t> offSince(std::size_t from) const {
        return {order_.begin() + static_cast<std::ptrdiff_t>(from), order_.end()};
    }

    void takeOff(std::size_t step, const std::vector<std::size_t>& jobs) {
        if (off_[step])
            return;
        for (const std::size_t before : t_.pulls[step])
            takeOff(before, jobs);
        off_[step] = true;
        order_.push_back(step);
        moves_.push_back({ActKind::Off, step});
        doReached(jobs);
    }

    void doReached(const std::vector<std::size_t>& jobs) {
        for (const std::size_t job : jobs)
            if (!done_[job] && !isWarm(job) && isReached(job))
                doJob(job);
    }

    [[nodiscard]] bool isReached(std::size_t job) const {
        for (std::size_t step = 0; step < t_.steps.size(); ++step)
            if (t_.reach[job][step] && !off_[step])
                return false;
        return true;
    }

    void doJob(std::size_t job) {
        done_[job] = true;
        moves_.push_back({ActKind::Job, kNoStep, job});
    }

    // Backwards; work on a warm engine just before its opening would close.
    void refit(const std::vector<std::size_t>& steps, const std::vector<std::size_t>& jobs) {
        for (auto step = steps.rbegin(); step != steps.rend(); ++step) {
            for (const std::size_t job : jobs)
                if (!done_[job] && t_.reach[job][*step])
                    doWarm(job, jobs);
            if (staysOff_[*step])
                continue;
            off_[*step] = false;
            moves_.push_back({ActKind::On, *step});
        }
    }

    // Warm work that shares no opening with the rest.
    void doRest(const std::vector<std::size_t>& jobs) {
        for (const std::size_t job : jobs)
            if (!done_[job])
                doWarm(job, jobs);
    }

    // Steps that only work on a warm engine needs come off now, not with the rest: oil is drained warm.
    void doWarm(std::size_t job, const std::vector<std::size_t>& jobs) {
        const std::size_t from = order_.size();
        openFor(job, jobs);
        doJob(job);
        refit(offSince(from), jobs);
    }

    const Teardown& t_;
    std::span<const Job> jobs_;
    std::vector<bool> off_;
    std::vector<bool> staysOff_;  ///< open for what is sent out
    std::vector<bool> done_;
    std::vector<std::size_t> order_;
    std::vector<Move> moves_;
};

// The last place before `offAt` at which everything that holds the part still is on.
std::size_t crackAt(const Teardown& t, const std::vector<Move>& moves, std::size_t offAt) {
    const auto& keeps = t.keeps[moves[offAt].step];
    const auto change = [&](const Move& move) {
        const bool isKept = std::find(keeps.begin(), keeps.end(), move.step) != keeps.end();
        return !isKept ? 0 : move.kind == ActKind::Off ? 1 : -1;
    };
    int missing = 0;
    for (std::size_t at = 0; at < offAt; ++at)
        missing += change(moves[at]);
    std::size_t at = offAt;
    while (missing > 0)
        missing -= change(moves[--at]);
    return at;
}

std::vector<Move> withBreakLoose(const Teardown& t, const std::vector<Move>& moves) {
    std::vector<std::vector<std::size_t>> crackBefore(moves.size());
    for (std::size_t at = 0; at < moves.size(); ++at)
        if (moves[at].kind == ActKind::Off && !t.steps[moves[at].step]->breakLoose.empty())
            crackBefore[crackAt(t, moves, at)].push_back(moves[at].step);
    std::vector<Move> result;
    for (std::size_t at = 0; at < moves.size(); ++at) {
        for (const std::size_t step : crackBefore[at])
            result.push_back({ActKind::BreakLoose, step});
        result.push_back(moves[at]);
    }
    return result;
}

// What a stop must say: what was closed, what is still off, what is already cracked loose.
class StopWords {
  public:
    StopWords(const Teardown& t, bool isElseWhole) : t_(t), isElseWhole_(isElseWhole) {}

    void see(const Move& move) {
        if (move.kind == ActKind::BreakLoose)
            loose_.push_back(move.step);
        if (move.kind == ActKind::Off) {
            std::erase(loose_, move.step);
            off_.push_back(move.step);
        }
        if (move.kind == ActKind::On) {
            std::erase(off_, move.step);
            closed_.push_back(move.step);
        }
    }

    std::string take() {
        // Nobody wheels it about with an axle cracked loose.
        std::string text = loose_.empty() ? "Safe to stop here" : "You can stop here, on the stand only";
        if (off_.empty() && loose_.empty()) {
            text += isElseWhole_ ? ": the machine is whole"
                                 : ": all that this work opened is closed; the machine is not whole";
        } else {
            const std::string parts = partsBackOn();
            text += parts.empty() ? "." : fmt::format(". Back on: {}.", parts);
            for (const std::size_t step : off_)
                text += stillWords(t_.steps[step]->name);
            for (const std::size_t step : loose_)
                text += fmt::format(" Cracked loose, not to be ridden or wheeled: {}.",
                                    t_.steps[step]->breakLoose);
        }
        closed_.clear();
        return text;
    }

  private:
    [[nodiscard]] std::string partsBackOn() const {
        std::vector<std::string> list;
        for (auto step = closed_.rbegin(); step != closed_.rend(); ++step) {
            const std::string& name = t_.steps[*step]->name;
            if (!standingOf(name).empty())
                continue;
            const std::string parts = partsOf(name);
            list.push_back(parts.empty() ? name : parts);
        }
        return fmt::format("{}", fmt::join(list, ", "));
    }

    // " Still: Seat off."; of a condition where it stands, if that has not been said: " Still on the stand."
    [[nodiscard]] std::string stillWords(const std::string& stepName) const {
        const std::string standing = standingOf(stepName);
        if (standing.empty())
            return fmt::format(" Still: {}.", stepName);
        return loose_.empty() ? fmt::format(" Still on the {}.", standing) : std::string{};
    }

    const Teardown& t_;
    bool isElseWhole_;
    std::vector<std::size_t> loose_;
    std::vector<std::size_t> off_;
    std::vector<std::size_t> closed_;
};

Act actOf(const Teardown& t, std::span<const Job> jobs, const Move& move) {
    Act act;
    act.kind = move.kind;
    if (move.kind == ActKind::Job) {
        act.job = move.job;
        act.text = jobs[move.job].name;
        act.minutes = jobs[move.job].minutes;
    } else if (move.step != kNoStep) {
        const StepVersion& step = *t.steps[move.step];
        act.step = step.code;
        act.text = move.kind == ActKind::BreakLoose ? step.breakLoose : step.name;
        if (move.kind == ActKind::Off)
            act.minutes = step.off;
        if (move.kind == ActKind::On)
            act.minutes = step.on;
    }
    return act;
}

units::Minutes timeAlone(const Teardown& t, std::span<const Job> jobs) {
    units::Minutes sum{};
    for (std::size_t job = 0; job < jobs.size(); ++job) {
        sum += jobs[job].minutes;
        for (std::size_t step = 0; step < t.steps.size(); ++step)
            if (t.reach[job][step])
                sum += t.steps[step]->off + t.steps[step]->on;
    }
    return sum;
}

}  // namespace

base::Result<Plan> planWork(std::span<const StepVersion* const> steps, std::span<const Job> jobs,
                            bool isElseWhole) {
    const auto teardown = Teardown::of(steps, jobs);
    if (!teardown)
        return tl::unexpected(teardown.error());
    const auto moves =
        withBreakLoose(*teardown, Worker(*teardown, jobs).run(splitIntoStages(*teardown, jobs)));
    Plan plan;
    plan.alone = timeAlone(*teardown, jobs);
    StopWords stop(*teardown, isElseWhole);
    for (const Move& move : moves) {
        stop.see(move);
        Act act = actOf(*teardown, jobs, move);
        if (act.kind == ActKind::SafeStop)
            act.text = stop.take();
        if (act.kind == ActKind::Off)
            plan.opened.push_back(act.step);
        act.starts = plan.work;
        plan.work += act.minutes;
        plan.acts.push_back(std::move(act));
    }
    return plan;
}

}  // namespace wm::weekend
