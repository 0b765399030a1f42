// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/plain_order.h"

namespace wm::weekend {

namespace {

// Opens, works and closes one stage after the other.
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
        for (const Stage& stage : stages.stages)
            work(stage);
        refit(stages.trunk.steps);
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

}  // namespace

std::vector<Move> plainOrder(const Teardown& teardown, std::span<const Job> jobs) {
    return Worker(teardown, jobs).run(splitIntoStages(teardown, jobs));
}

}  // namespace wm::weekend
