// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/teardown.h"

#include <algorithm>
#include <numeric>
#include <unordered_map>

namespace wm::weekend {

namespace {

using Numbers = std::unordered_map<std::string_view, std::size_t>;

void findNeeds(Teardown& t, const Numbers& numberOf) {
    const std::size_t count = t.steps.size();
    t.under.assign(count, std::vector<bool>(count, false));
    t.pulls.resize(count);
    for (std::size_t a = 0; a < count; ++a) {  // needs have the lower numbers: their rows are complete
        for (const Need& need : t.steps[a]->needs) {
            if (!need.applies)
                continue;
            const std::size_t b = numberOf.at(need.code);
            t.pulls[a].push_back(b);
            t.under[a][b] = true;
            for (std::size_t c = 0; c < count; ++c)
                if (t.under[b][c])
                    t.under[a][c] = true;
        }
    }
}

bool pullsReach(const Teardown& t, std::size_t from, std::size_t to) {
    std::vector<std::size_t> open{from};
    std::vector<bool> seen(t.steps.size(), false);
    while (!open.empty()) {
        const std::size_t at = open.back();
        open.pop_back();
        if (at == to)
            return true;
        if (seen[at])
            continue;
        seen[at] = true;
        open.insert(open.end(), t.pulls[at].begin(), t.pulls[at].end());
    }
    return false;
}

// A stem nut is cracked while the fork is in, but the bars lie over it: so the bars come off before the fork.
void findPulls(Teardown& t, const Numbers& numberOf) {
    t.keeps.resize(t.steps.size());
    for (std::size_t s = 0; s < t.steps.size(); ++s) {
        if (t.steps[s]->breakLoose.empty())
            continue;
        for (const base::Code& code : t.steps[s]->looseBefore) {
            const auto kept = numberOf.find(code.code);
            if (kept == numberOf.end() || kept->second == s)
                continue;
            t.keeps[s].push_back(kept->second);
            if (!t.under[s][kept->second])
                continue;
            for (const Need& need : t.steps[s]->needs) {
                if (!need.applies)
                    continue;
                const std::size_t over = numberOf.at(need.code);
                if (!pullsReach(t, over, kept->second))
                    t.pulls[kept->second].push_back(over);
            }
        }
    }
}

class Groups {
  public:
    explicit Groups(std::size_t count) : parent_(count) { std::iota(parent_.begin(), parent_.end(), 0U); }
    std::size_t of(std::size_t a) {
        while (parent_[a] != a)
            a = parent_[a] = parent_[parent_[a]];
        return a;
    }
    void join(std::size_t a, std::size_t b) { parent_[of(a)] = of(b); }

  private:
    std::vector<std::size_t> parent_;
};

// Steps are in need order, so the next trunk step is the first one left, if all others left stand on it.
std::vector<std::size_t> trunkOf(const Teardown& t) {
    std::vector<std::size_t> trunk;
    std::vector<std::size_t> left;
    for (std::size_t step = 0; step < t.steps.size(); ++step)
        (t.first[step] ? trunk : left).push_back(step);
    for (std::size_t next = 0; next < left.size(); ++next) {
        for (std::size_t other = next + 1; other < left.size(); ++other)
            if (!t.under[left[other]][left[next]])
                return trunk;
        trunk.push_back(left[next]);
    }
    return trunk;
}

void findFirst(Teardown& t) {
    t.first.assign(t.steps.size(), false);
    for (std::size_t step = 0; step < t.steps.size(); ++step) {
        if (t.steps[step]->bodyState != upkeep::BodyState::Warm)
            continue;
        t.first[step] = true;
        for (std::size_t below = 0; below < t.steps.size(); ++below)
            if (t.under[step][below])
                t.first[below] = true;
    }
}

}  // namespace

base::Result<Teardown> Teardown::of(std::span<const StepVersion* const> steps, std::span<const Job> jobs) {
    std::vector<std::string> codes;
    for (const Job& job : jobs)
        codes.insert(codes.end(), job.steps.begin(), job.steps.end());
    auto opened = opening(steps, codes);
    if (!opened)
        return tl::unexpected(opened.error());
    Teardown t;
    t.steps = std::move(*opened);
    Numbers numberOf;
    for (std::size_t s = 0; s < t.steps.size(); ++s)
        numberOf.emplace(t.steps[s]->code, s);
    findNeeds(t, numberOf);
    findPulls(t, numberOf);
    findFirst(t);
    for (const Job& job : jobs) {
        std::vector<bool> reach(t.steps.size(), false);
        for (const std::string& code : job.steps) {
            const std::size_t step = numberOf.at(code);
            reach[step] = true;
            for (std::size_t below = 0; below < t.steps.size(); ++below)
                if (t.under[step][below])
                    reach[below] = true;
        }
        t.reach.push_back(std::move(reach));
    }
    return t;
}

Stages splitIntoStages(const Teardown& t, std::span<const Job> jobs) {
    Stages result;
    result.trunk.steps = trunkOf(t);
    std::vector<bool> isTrunk(t.steps.size(), false);
    for (const std::size_t step : result.trunk.steps)
        isTrunk[step] = true;
    Groups groups(t.steps.size());
    for (std::size_t a = 0; a < t.steps.size(); ++a)
        for (std::size_t b = 0; b < t.steps.size(); ++b)
            if (!isTrunk[a] && !isTrunk[b] && t.under[a][b])
                groups.join(a, b);
    std::vector<std::optional<std::size_t>> topOf(jobs.size());
    for (std::size_t job = 0; job < jobs.size(); ++job)
        for (std::size_t step = 0; step < t.steps.size(); ++step)
            if (!isTrunk[step] && t.reach[job][step]) {
                groups.join(topOf[job].value_or(step), step);
                topOf[job] = step;
            }
    std::unordered_map<std::size_t, std::size_t> stageOf;
    for (std::size_t job = 0; job < jobs.size(); ++job) {
        if (!topOf[job]) {
            result.trunk.jobs.push_back(job);
            continue;
        }
        const auto [at, isNew] = stageOf.emplace(groups.of(*topOf[job]), result.stages.size());
        if (isNew)
            result.stages.emplace_back();
        result.stages[at->second].jobs.push_back(job);
    }
    for (std::size_t step = 0; step < t.steps.size(); ++step)
        if (!isTrunk[step])
            result.stages[stageOf.at(groups.of(step))].steps.push_back(step);
    return result;
}

}  // namespace wm::weekend
