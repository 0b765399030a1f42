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

// Opens, works and closes one stage after the other: jobs that share an engine, cold or warm.
class Worker {
  public:
    Worker(const Teardown& teardown, std::span<const Job> jobs)
        : t_(teardown),
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
        refit(stages.trunk.steps);
        if (!moves_.empty())
            moves_.push_back({ActKind::SafeStop});
        return std::move(moves_);
    }

  private:
    void work(const Stage& stage) {
        const std::size_t from = order_.size();
        for (const std::size_t job : stage.jobs)
            openFor(job, stage.jobs);
        refit({order_.begin() + static_cast<std::ptrdiff_t>(from), order_.end()});
    }

    void openFor(std::size_t job, const std::vector<std::size_t>& jobs) {
        for (std::size_t step = 0; step < t_.steps.size(); ++step)
            if (t_.reach[job][step])
                takeOff(step, jobs);
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
            if (!done_[job] && isReached(job))
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

    void refit(const std::vector<std::size_t>& steps) {
        for (auto step = steps.rbegin(); step != steps.rend(); ++step) {
            if (staysOff_[*step])
                continue;
            off_[*step] = false;
            moves_.push_back({ActKind::On, *step});
        }
    }

    const Teardown& t_;
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
    explicit StopWords(bool isElseWhole) : isElseWhole_(isElseWhole) {}

    void see(ActKind kind, const StepVersion* step) {
        if (kind == ActKind::BreakLoose)
            loose_.push_back(step);
        if (kind == ActKind::Off) {
            std::erase(loose_, step);
            off_.push_back(step);
        }
        if (kind == ActKind::On) {
            std::erase(off_, step);
            closed_.push_back(step);
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
            for (const StepVersion* step : off_)
                text += stillWords(step->name);
            for (const StepVersion* step : loose_)
                text += fmt::format(" Cracked loose, not to be ridden or wheeled: {}.", step->breakLoose);
        }
        closed_.clear();
        return text;
    }

  private:
    [[nodiscard]] std::string partsBackOn() const {
        std::vector<std::string> list;
        for (auto step = closed_.rbegin(); step != closed_.rend(); ++step) {
            const std::string& name = (*step)->name;
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

    bool isElseWhole_;
    std::vector<const StepVersion*> loose_;
    std::vector<const StepVersion*> off_;
    std::vector<const StepVersion*> closed_;
};

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

// Jobs that are done on one and the same engine, with an opening of their own.
struct Round {
    bool isWarm = false;
    std::vector<std::size_t> numbers{};  ///< of its jobs
    std::vector<Job> jobs{};
};

std::vector<Round> roundsOf(std::span<const Job> jobs) {
    Round warm{.isWarm = true};
    Round rest;
    bool isClosedAfterwards = true;
    for (std::size_t job = 0; job < jobs.size(); ++job) {
        Round& round = jobs[job].bodyState == upkeep::BodyState::Warm ? warm : rest;
        round.numbers.push_back(job);
        round.jobs.push_back(jobs[job]);
        isClosedAfterwards = isClosedAfterwards && !jobs[job].sendsOut;
    }
    std::vector<Round> rounds;
    for (Round* round : {isClosedAfterwards ? &rest : &warm, isClosedAfterwards ? &warm : &rest})
        if (!round->jobs.empty())
            rounds.push_back(std::move(*round));
    return rounds;
}

// Writes the acts of one round after the other.
class Writer {
  public:
    Writer(std::span<const Job> jobs, bool isElseWhole, const EngineTimes& times)
        : jobs_(jobs), isElseWhole_(isElseWhole), times_(times), stop_(isElseWhole) {}

    void write(const Round& round, const Teardown& t) {
        if (round.isWarm)
            add({.kind = ActKind::Run, .text = runWords(), .minutes = times_.toWarm});
        if (isWarm_ && !round.isWarm && wantsCold(round))
            add({.kind = ActKind::Wait,
                 .text = "Wait until the engine is cold, hands off",
                 .minutes = times_.toCold});
        isWarm_ = round.isWarm;
        for (const Move& move : withBreakLoose(t, Worker(t, round.jobs).run(splitIntoStages(t, round.jobs))))
            write(round, t, move);
    }

    Plan take() { return std::move(plan_); }

  private:
    [[nodiscard]] std::string runWords() const {
        const std::string words = "Run the engine until it is warm, outside";
        return isElseWhole_ ? words : words + "; not before what else is off it or hand-tight is closed";
    }

    static bool wantsCold(const Round& round) {
        return std::any_of(round.jobs.begin(), round.jobs.end(),
                           [](const Job& job) { return job.bodyState == upkeep::BodyState::Cold; });
    }

    void write(const Round& round, const Teardown& t, const Move& move) {
        Act act;
        act.kind = move.kind;
        if (move.kind == ActKind::Job) {
            act.job = round.numbers[move.job];
            act.text = jobs_[*act.job].name;
            act.minutes = jobs_[*act.job].minutes;
        } else if (move.kind == ActKind::SafeStop) {
            act.text = stop_.take();
        } else {
            const StepVersion& step = *t.steps[move.step];
            stop_.see(move.kind, &step);
            act.step = step.code;
            act.text = move.kind == ActKind::BreakLoose ? step.breakLoose : step.name;
            if (move.kind == ActKind::Off)
                act.minutes = step.off;
            if (move.kind == ActKind::On)
                act.minutes = step.on;
        }
        add(std::move(act));
    }

    void add(Act act) {
        act.starts = plan_.work + plan_.waiting;
        (act.kind == ActKind::Wait ? plan_.waiting : plan_.work) += act.minutes;
        auto& opened = plan_.opened;
        if (act.kind == ActKind::Off && std::find(opened.begin(), opened.end(), act.step) == opened.end())
            opened.push_back(act.step);
        plan_.acts.push_back(std::move(act));
    }

    std::span<const Job> jobs_;
    bool isElseWhole_;
    EngineTimes times_;
    StopWords stop_;
    bool isWarm_ = false;
    Plan plan_;
};

}  // namespace

base::Result<Plan> planWork(std::span<const StepVersion* const> steps, std::span<const Job> jobs,
                            bool isElseWhole, const EngineTimes& times) {
    const auto all = Teardown::of(steps, jobs);
    if (!all)
        return tl::unexpected(all.error());
    Writer writer(jobs, isElseWhole, times);
    for (const Round& round : roundsOf(jobs)) {
        const auto teardown = Teardown::of(steps, round.jobs);
        if (!teardown)
            return tl::unexpected(teardown.error());
        writer.write(round, *teardown);
    }
    Plan plan = writer.take();
    plan.alone = timeAlone(*all, jobs);
    return plan;
}

}  // namespace wm::weekend
