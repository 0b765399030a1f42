// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/plan.h"

#include <algorithm>
#include <set>

#include "core/weekend/act_graph.h"
#include "core/weekend/plan_words.h"

namespace wm::weekend {

using upkeep::BodyState;

namespace {

// Jobs that are done in one opening.
struct Round {
    std::vector<std::size_t> numbers{};  ///< of its jobs
    std::vector<Job> jobs{};
    RoundTerms terms{};

    void add(std::size_t number, const Job& job) {
        numbers.push_back(number);
        jobs.push_back(job);
        terms.closes = terms.closes && !job.sendsOut;
    }
};

bool isWarm(const Job& job) {
    return job.bodyState == BodyState::Warm;
}

// Oil is drained warm: what lies under it can't wait for a run at the end.
bool drainsWarm(const Teardown& t, std::size_t job) {
    for (std::size_t step = 0; step < t.steps.size(); ++step)
        if (t.reach[job][step] && t.steps[step]->bodyState == BodyState::Warm)
            return true;
    return false;
}

bool comesLast(const Job& job) {
    return job.definition != nullptr && job.definition->comesLast;
}

// What has to be open for the same things as a job that sends something out, but for what all stands on.
bool staysOpenWith(const Teardown& t, std::span<const Job> jobs, std::size_t job) {
    for (std::size_t out = 0; out < jobs.size(); ++out)
        for (std::size_t step = 0; step < t.steps.size(); ++step)
            if (jobs[out].sendsOut && t.reach[out][step] && t.reach[job][step] && !t.pulls[step].empty())
                return true;
    return false;
}

// What closes comes first; then, on a machine that is whole, what wants the engine warm; last what stays
// open. What comes last of all that is opened is in the last of them.
std::vector<Round> roundsOf(const Teardown& all, std::span<const Job> jobs, bool isElseWhole) {
    Round rest;
    Round warm;
    Round out;
    bool isOne = false;
    for (std::size_t job = 0; job < jobs.size(); ++job)
        isOne = isOne || (!isWarm(jobs[job]) && drainsWarm(all, job));
    std::vector<std::size_t> last;
    for (std::size_t job = 0; job < jobs.size(); ++job) {
        // Where oil was drained it is closed first: it is run for its level when nothing is away.
        const bool goesOut = jobs[job].sendsOut ||
                             (!isWarm(jobs[job]) && !drainsWarm(all, job) && staysOpenWith(all, jobs, job));
        if (comesLast(jobs[job]) && !goesOut)
            last.push_back(job);
        else
            (goesOut ? out : !isOne && isWarm(jobs[job]) ? warm : rest).add(job, jobs[job]);
    }
    for (const std::size_t job : last)
        (!out.jobs.empty() ? out : !warm.jobs.empty() ? warm : rest).add(job, jobs[job]);
    warm.terms.beginsWarm = true;
    rest.terms.beginsWarm = isOne;
    std::vector<Round> rounds;
    for (Round* round : {&rest, &warm, &out}) {
        round->terms.closes = round->terms.closes && isElseWhole;
        if (!round->jobs.empty())
            rounds.push_back(std::move(*round));
    }
    return rounds;
}

// Writes the acts of one round after the other.
class Writer {
  public:
    Writer(std::span<const Job> jobs, const PlanTerms& terms) : jobs_(jobs), terms_(terms) {
        stop_.isElseWhole = terms.isElseWhole;
    }

    void write(const Round& round, const Teardown& t, const std::vector<Node>& nodes) {
        const std::size_t from = plan_.acts.size();
        waitIfCold(round, t, nodes);
        for (std::size_t at = 0; at < nodes.size(); ++at) {
            if (isStop(t, nodes, at))
                addStop();
            write(round, t, nodes, at);
        }
        addStop();
        std::set<std::string> seen;
        for (std::size_t at = plan_.acts.size(); at > from; --at)
            std::erase_if(plan_.acts[at - 1].torques,
                          [&](const std::string& joint) { return !seen.insert(joint).second; });
    }

    Plan take() { return std::move(plan_); }

  private:
    static bool is(const Node& node, std::initializer_list<ActKind> kinds) {
        return std::find(kinds.begin(), kinds.end(), node.kind) != kinds.end();
    }

    // After a run of the round before.
    void waitIfCold(const Round& round, const Teardown& t, const std::vector<Node>& nodes) {
        const bool wants = std::any_of(nodes.begin(), nodes.end(), [&](const Node& node) {
            return (node.kind == ActKind::Off && t.steps[node.step]->bodyState == BodyState::Cold) ||
                   (node.kind == ActKind::Job && round.jobs[node.job].bodyState == BodyState::Cold);
        });
        if (ranUntil_ && !round.terms.beginsWarm && wants)
            addWait();
    }

    // Between the refit of one part and the teardown of the next, if nothing is off that the rest does not
    // stand on.
    [[nodiscard]] bool isStop(const Teardown& t, const std::vector<Node>& nodes, std::size_t at) const {
        if (!hasClosed_ || !is(nodes[at], {ActKind::BreakLoose, ActKind::Crack, ActKind::Off, ActKind::Do}))
            return false;
        std::size_t next = at;
        while (next < nodes.size() && is(nodes[next], {ActKind::BreakLoose, ActKind::Crack, ActKind::Do}))
            if (nodes[next].kind == ActKind::Do && nodes[next].doing->comes != upkeep::Comes::Before)
                return false;
            else
                ++next;
        if (next == nodes.size() || nodes[next].kind != ActKind::Off)
            return false;
        for (; next < nodes.size(); ++next)
            if (nodes[next].kind == ActKind::Off)
                for (const std::size_t off : off_)
                    if (!t.under[nodes[next].step][off] && !t.first[off] && !comesOnNoMore(nodes, at, off))
                        return false;
        return true;
    }

    static bool comesOnNoMore(const std::vector<Node>& nodes, std::size_t at, std::size_t step) {
        return std::none_of(
            nodes.begin() + static_cast<std::ptrdiff_t>(at), nodes.end(),
            [&](const Node& node) { return node.kind == ActKind::On && node.step == step && !node.isOff; });
    }

    [[nodiscard]] JointCard cardOf(const std::string& joint) const {
        const auto known = std::find_if(terms_.joints.begin(), terms_.joints.end(),
                                        [&](const JointCard& card) { return card.code == joint; });
        return known == terms_.joints.end() ? JointCard{.code = joint, .name = joint} : *known;
    }

    [[nodiscard]] std::string jointWords(const std::string& joint) const {
        const JointCard card = cardOf(joint);
        return card.held.empty() ? card.name : card.name + ", held: " + card.held;
    }

    void write(const Round& round, const Teardown& t, const std::vector<Node>& nodes, std::size_t at) {
        const Node& node = nodes[at];
        switch (node.kind) {
            case ActKind::BreakLoose:
            case ActKind::Off:
            case ActKind::On:
                return writeStep(t, nodes, at);
            case ActKind::Job:
                return writeJob(round.numbers[node.job], nodes, at);
            case ActKind::Crack:
            case ActKind::Torque:
                return writeJoint(node);
            case ActKind::Do:
            case ActKind::Run:
                return writeDoing(node);
            case ActKind::Wait:
                return addWait();
            case ActKind::SafeStop:
                break;
        }
    }

    void writeStep(const Teardown& t, const std::vector<Node>& nodes, std::size_t at) {
        const Node& node = nodes[at];
        if (node.isOff)
            return;
        const StepVersion& step = *t.steps[node.step];
        Act act{.kind = node.kind, .step = step.code, .text = step.name};
        if (node.kind == ActKind::BreakLoose) {
            act.text = step.breakLoose;
            stop_.cracked.push_back(act.text);
        }
        if (node.kind == ActKind::Off) {
            act.minutes = step.off;
            off_.insert(node.step);
            stop_.off.push_back(step.name);
            eraseOne(stop_.cracked, step.breakLoose);
            for (const base::Code& joint : step.joints)
                tightened(cardOf(joint.code).name);
            if (std::find(plan_.opened.begin(), plan_.opened.end(), step.code) == plan_.opened.end())
                plan_.opened.push_back(step.code);
        }
        if (node.kind == ActKind::On) {
            act.minutes = step.on;
            off_.erase(node.step);
            eraseOne(stop_.off, step.name);
            stop_.closed.insert(stop_.closed.begin(), step.name);
            hasClosed_ = true;
            act.torques = torquedHere(step.joints, nodes, at);
        }
        add(std::move(act));
    }

    static void eraseOne(std::vector<std::string>& names, const std::string& name) {
        if (const auto at = std::find(names.begin(), names.end(), name); at != names.end())
            names.erase(at);
    }

    void loosened(const std::string& joint) {
        if (std::find(stop_.loose.begin(), stop_.loose.end(), joint) == stop_.loose.end())
            stop_.loose.push_back(joint);
    }
    void tightened(const std::string& joint) { std::erase(stop_.loose, joint); }

    void writeJob(std::size_t number, const std::vector<Node>& nodes, std::size_t at) {
        if (nodes[at].isOff)
            return stop_.left.push_back(jobs_[number].name);
        Act act{.kind = ActKind::Job, .text = jobs_[number].name};
        act.job = number;
        act.minutes = jobs_[number].minutes;
        if (jobs_[number].definition != nullptr)
            act.torques = torquedHere(jobs_[number].definition->joints, nodes, at);
        add(std::move(act));
    }

    // All but those that have an act of their own.
    std::vector<std::string> torquedHere(const std::vector<base::Code>& joints,
                                         const std::vector<Node>& nodes, std::size_t at) {
        std::vector<std::string> here;
        for (const base::Code& joint : joints) {
            const auto own = std::find_if(nodes.begin(), nodes.end(), [&](const Node& node) {
                return node.kind == ActKind::Torque && node.joint == joint.code;
            });
            if (own == nodes.end()) {
                here.push_back(joint.code);
                stop_.cures = stop_.cures || cardOf(joint.code).cures;
            }
            if (own != nodes.end() && own - nodes.begin() > static_cast<std::ptrdiff_t>(at))
                loosened(cardOf(joint.code).name);
        }
        return here;
    }

    void writeJoint(const Node& node) {
        if (node.isOff)
            return;
        Act act{.kind = node.kind, .text = jointWords(node.joint)};
        act.joint = node.joint;
        if (node.kind == ActKind::Torque) {
            act.torques = {node.joint};
            stop_.cures = stop_.cures || cardOf(node.joint).cures;
            tightened(cardOf(node.joint).name);
        } else {
            loosened(cardOf(node.joint).name);
        }
        add(std::move(act));
    }

    void writeDoing(const Node& node) {
        if (node.isOff)
            return;
        Act act{.kind = node.kind};
        if (node.doing != nullptr) {
            act.text = node.doing->what;
            act.doing = node.doing->code;
            act.minutes = node.doing->minutes;
        } else {
            act.stop.isElseWhole = terms_.isElseWhole;
            act.minutes = terms_.times.toWarm;
        }
        add(std::move(act));
        if (node.kind == ActKind::Run)
            ranUntil_ = now();
    }

    // What was done meanwhile counts: the engine cools by itself.
    void addWait() {
        Act act{.kind = ActKind::Wait};
        const units::Minutes since = now() - ranUntil_.value_or(now());
        act.minutes = since < terms_.times.toCold ? terms_.times.toCold - since : units::Minutes{};
        add(std::move(act));
        ranUntil_.reset();
    }

    void addStop() {
        Act act{.kind = ActKind::SafeStop, .stop = stop_};
        add(std::move(act));
        stop_.closed.clear();
        hasClosed_ = false;
    }

    [[nodiscard]] units::Minutes now() const { return plan_.work + plan_.waiting; }

    void add(Act act) {
        act.text = base::said(actPhrase(act));
        act.starts = now();
        (act.kind == ActKind::Wait ? plan_.waiting : plan_.work) += act.minutes;
        plan_.acts.push_back(std::move(act));
    }

    std::span<const Job> jobs_;
    const PlanTerms& terms_;
    Stop stop_;  ///< as it stands now
    std::set<std::size_t> off_;
    bool hasClosed_ = false;
    std::optional<units::Minutes> ranUntil_;
    Plan plan_;
};

base::Result<Plan> planTogether(std::span<const StepVersion* const> steps, std::span<const Job> jobs,
                                const PlanTerms& terms) {
    const auto all = Teardown::of(steps, jobs);
    if (!all)
        return tl::unexpected(all.error());
    Writer writer(jobs, terms);
    for (const Round& round : roundsOf(*all, jobs, terms.isElseWhole)) {
        const auto teardown = Teardown::of(steps, round.jobs);
        if (!teardown)
            return tl::unexpected(teardown.error());
        const auto nodes = orderOfActs(*teardown, round.jobs, round.terms);
        if (!nodes)
            return tl::unexpected(nodes.error());
        writer.write(round, *teardown, *nodes);
    }
    return writer.take();
}

}  // namespace

base::Result<Plan> planWork(std::span<const StepVersion* const> steps, std::span<const Job> jobs,
                            const PlanTerms& terms) {
    auto plan = planTogether(steps, jobs, terms);
    if (plan)
        for (const Job& job : jobs)
            if (const auto alone = planTogether(steps, {&job, 1}, terms))
                plan->alone += alone->work;
    return plan;
}

}  // namespace wm::weekend
