// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/act_graph.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/weekend/act_sort.h"
#include "core/weekend/looks.h"

namespace wm::weekend {

using upkeep::ActRef;
using upkeep::BodyState;
using upkeep::Comes;
using upkeep::Deed;

namespace {

// Places within one move of the plain order.
enum Sub : std::size_t { kLoosen = 0, kBefore = 1, kMove = 2, kTorque = 3, kAfter = 4, kSubs = 5 };

class Builder {
  public:
    Builder(const Teardown& t, std::span<const Job> jobs, const RoundTerms& terms)
        : t_(t),
          jobs_(jobs),
          terms_(terms),
          off_(t.steps.size(), kNone),
          on_(t.steps.size(), kNone),
          job_(jobs.size(), kNone) {}

    std::vector<Node> build() {
        addMoves();
        bindNeeds();
        for (std::size_t step = 0; step < t_.steps.size(); ++step)
            if (off_[step] != kNone && !t_.steps[step]->breakLoose.empty())
                addBreakLoose(step);
        addDoings();
        addJoints();
        eachEdge([&](const upkeep::Edge& edge) { bind(edge); });
        leaveOutWhatWaitsInVain();
        bindLooks();
        bindLast();
        bindRuns();
        if (terms_.beginsWarm)
            bindWarmStart();
        return std::move(nodes_);
    }

  private:
    static constexpr auto kNone = static_cast<std::size_t>(-1);

    std::size_t add(Node node) {
        nodes_.push_back(std::move(node));
        return nodes_.size() - 1;
    }

    void before(std::size_t earlier, std::size_t later) {
        if (earlier != kNone && later != kNone)
            nodes_[later].after.push_back(earlier);
    }

    void addMoves() {
        const std::vector<Move> moves = plainOrder(t_, jobs_);
        for (std::size_t at = 0; at < moves.size(); ++at) {
            const Move& move = moves[at];
            Node node{.kind = move.kind, .step = move.step, .job = move.job};
            node.rank = at * kSubs + kMove;
            const std::size_t number = add(std::move(node));
            (move.kind == ActKind::Off  ? off_[move.step]
             : move.kind == ActKind::On ? on_[move.step]
                                        : job_[move.job]) = number;
        }
        last_ = moves.size() * kSubs;
    }

    void bindNeeds() {
        for (std::size_t step = 0; step < t_.steps.size(); ++step) {
            before(off_[step], on_[step]);
            for (const std::size_t other : t_.pulls[step])
                before(off_[other], off_[step]);
            for (std::size_t other = 0; other < t_.steps.size(); ++other)
                if (t_.under[step][other])
                    before(on_[step], on_[other]);
            for (std::size_t job = 0; job < jobs_.size(); ++job)
                if (t_.reach[job][step]) {
                    before(off_[step], job_[job]);
                    before(job_[job], on_[step]);
                }
        }
    }

    [[nodiscard]] bool isOnAgainBefore(std::size_t kept, std::size_t step) const {
        return on_[kept] != kNone && nodes_[on_[kept]].rank < nodes_[off_[step]].rank;
    }

    // Late: when what holds the part is on again. Not while something else that must be on is still off.
    [[nodiscard]] bool canBeCrackedLate(std::size_t step) const {
        return std::all_of(t_.keeps[step].begin(), t_.keeps[step].end(), [&](std::size_t kept) {
            return nodes_[off_[step]].rank < nodes_[off_[kept]].rank || isOnAgainBefore(kept, step);
        });
    }

    // As late as what holds the part allows: before it comes off, or when it is on again.
    void addBreakLoose(std::size_t step) {
        Node node{.kind = ActKind::BreakLoose, .step = step};
        node.rank = nodes_[off_[step]].rank - kMove + kLoosen;
        node.isPulled = true;
        const std::size_t crack = add(std::move(node));
        before(crack, off_[step]);
        const bool isLate = canBeCrackedLate(step);
        for (const std::size_t kept : t_.keeps[step]) {
            if (isLate && isOnAgainBefore(kept, step))
                before(on_[kept], crack);
            else
                before(crack, off_[kept]);
        }
    }

    // A job of the plan that does the same takes the place of the doing.
    [[nodiscard]] std::optional<std::size_t> jobInsteadOf(const upkeep::Doing& doing) const {
        for (std::size_t job = 0; job < jobs_.size(); ++job)
            if (jobs_[job].definition != nullptr && jobs_[job].definition->code == doing.code)
                return job_[job];
        return std::nullopt;
    }

    // What comes before is wanted by the first that asks for it, what comes after by the last.
    void place(const upkeep::Doing& doing, std::size_t anchor, std::size_t sub) {
        const std::size_t rank = nodes_[anchor].rank - kMove + sub;
        const auto job = jobInsteadOf(doing);
        const auto [known, isNew] = doings_.emplace(doing.code, job.value_or(nodes_.size()));
        if (isNew && !job) {
            Node node{.kind = doing.runs ? ActKind::Run : ActKind::Do};
            node.doing = &doing;
            node.rank = rank;
            node.isPulled = sub != kAfter;
            add(std::move(node));
        }
        Node& node = nodes_[known->second];
        if (!job)
            node.rank = sub == kAfter ? std::max(node.rank, rank) : std::min(node.rank, rank);
        if (anchor == known->second)
            return;
        if (sub == kAfter)
            before(anchor, known->second);
        else
            before(known->second, anchor);
    }

    void addDoings() {
        for (std::size_t step = 0; step < t_.steps.size(); ++step)
            for (const upkeep::Doing& doing : t_.steps[step]->doings) {
                if (doing.comes == Comes::Before) {
                    place(doing, off_[step], kBefore);
                    if (t_.steps[step]->bodyState == BodyState::Cold)
                        wantCold_.insert(doings_.at(doing.code));
                } else if (on_[step] != kNone && (terms_.closes || !doing.runs)) {
                    place(doing, on_[step], doing.comes == Comes::After ? kAfter : kBefore);
                    if (doing.comes == Comes::Between)
                        before(off_[step], doings_.at(doing.code));
                }
            }
        for (std::size_t job = 0; job < jobs_.size(); ++job)
            if (jobs_[job].definition != nullptr)
                for (const upkeep::Doing& doing : jobs_[job].definition->doings)
                    if (terms_.closes || !doing.runs)
                        place(doing, job_[job], doing.comes == Comes::Before ? kBefore : kAfter);
    }

    // What a task says of a joint holds while the task opens it itself.
    template <class Visit>
    void eachEdge(Visit&& visit) const {
        for (const StepVersion* step : t_.steps)
            for (const upkeep::Edge& edge : step->edges)
                visit(edge);
        const auto isLooked = [this](std::size_t job, const ActRef& ref) {
            return (ref.deed == Deed::Crack || ref.deed == Deed::Torque) && isLook(job, ref.code);
        };
        for (std::size_t job = 0; job < jobs_.size(); ++job)
            if (jobs_[job].definition != nullptr)
                for (const upkeep::Edge& edge : jobs_[job].definition->edges)
                    if (!isLooked(job, edge.earlier) && !isLooked(job, edge.later))
                        visit(edge);
    }

    // The joints of which an edge speaks have acts of their own.
    void addJoints() {
        eachEdge([&](const upkeep::Edge& edge) {
            for (const ActRef* ref : {&edge.earlier, &edge.later}) {
                if (ref->deed == Deed::Crack && !cracks_.contains(ref->code))
                    addCrack(ref->code);
                if (ref->deed == Deed::Torque && !torques_.contains(ref->code))
                    addTorque(ref->code);
            }
        });
        for (const auto& [joint, torque] : torques_)
            if (const auto crack = cracks_.find(joint); crack != cracks_.end())
                before(crack->second, torque);
    }

    static bool lists(const std::vector<base::Code>& joints, const std::string& joint) {
        return std::any_of(joints.begin(), joints.end(),
                           [&](const auto& each) { return each.code == joint; });
    }
    [[nodiscard]] bool ofStep(std::size_t step, const std::string& joint) const {
        return lists(t_.steps[step]->joints, joint);
    }
    [[nodiscard]] bool ofJob(std::size_t job, const std::string& joint) const {
        return jobs_[job].definition != nullptr && lists(jobs_[job].definition->joints, joint);
    }

    // Whether the job only puts a wrench on the joint of a step that comes off for other work (a check of the
    // axles): it does so when that is back on and torqued.
    [[nodiscard]] bool isLook(std::size_t job, const std::string& joint) const {
        if (!ofJob(job, joint) || cracks(*jobs_[job].definition, joint))
            return false;
        bool isElsewhere = false;
        for (std::size_t step = 0; step < t_.steps.size(); ++step)
            if (ofStep(step, joint)) {
                if (t_.reach[job][step] || t_.steps[step]->edges.empty())
                    return false;
                isElsewhere = true;
            }
        return isElsewhere;
    }

    void addCrack(const std::string& joint) {
        std::vector<std::size_t> wanted;
        for (std::size_t step = 0; step < t_.steps.size(); ++step)
            if (ofStep(step, joint))
                wanted.push_back(off_[step]);
        for (std::size_t job = 0; job < jobs_.size(); ++job)
            if (ofJob(job, joint) && !isLook(job, joint))
                wanted.push_back(job_[job]);
        if (wanted.empty())
            return;
        Node node{.kind = ActKind::Crack};
        node.joint = joint;
        node.rank = last_;
        node.isPulled = true;
        const std::size_t crack = cracks_[joint] = add(std::move(node));
        for (const std::size_t each : wanted) {
            before(crack, each);
            nodes_[crack].rank = std::min(nodes_[crack].rank, nodes_[each].rank - kMove + kLoosen);
        }
    }

    // Not while what it holds is away.
    void addTorque(const std::string& joint) {
        std::vector<std::size_t> closed;
        for (std::size_t step = 0; step < t_.steps.size(); ++step)
            if (ofStep(step, joint)) {
                if (on_[step] == kNone)
                    return;
                closed.push_back(on_[step]);
            }
        for (std::size_t job = 0; job < jobs_.size(); ++job)
            if (ofJob(job, joint) && !isLook(job, joint))
                closed.push_back(job_[job]);
        if (closed.empty())
            return;
        Node node{.kind = ActKind::Torque};
        node.joint = joint;
        const std::size_t torque = torques_[joint] = add(std::move(node));
        for (const std::size_t each : closed) {
            before(each, torque);
            nodes_[torque].rank = std::max(nodes_[torque].rank, nodes_[each].rank - kMove + kTorque);
        }
    }

    [[nodiscard]] std::vector<std::size_t> named(const ActRef& ref) const {
        std::vector<std::size_t> found;
        const auto in = [&](const std::map<std::string, std::size_t>& map) {
            if (const auto at = map.find(ref.code); at != map.end())
                found.push_back(at->second);
        };
        switch (ref.deed) {
            case Deed::Crack:
                in(cracks_);
                break;
            case Deed::Torque:
                in(torques_);
                break;
            case Deed::Do:
                in(doings_);
                break;
            case Deed::Job:
                for (std::size_t job = 0; job < jobs_.size(); ++job)
                    if (jobs_[job].definition != nullptr && jobs_[job].definition->code == ref.code)
                        found.push_back(job_[job]);
                break;
            case Deed::Off:
            case Deed::On:
                for (std::size_t step = 0; step < t_.steps.size(); ++step)
                    if (t_.steps[step]->code == ref.code)
                        found.push_back((ref.deed == Deed::Off ? off_ : on_)[step]);
                break;
        }
        return found;
    }

    void bind(const upkeep::Edge& edge) {
        for (const std::size_t earlier : named(edge.earlier))
            for (const std::size_t later : named(edge.later))
                before(earlier, later);
    }

    [[nodiscard]] bool isAway(const ActRef& ref) const {
        for (std::size_t step = 0; step < t_.steps.size(); ++step)
            if (on_[step] == kNone && ((ref.deed == Deed::On && t_.steps[step]->code == ref.code) ||
                                       (ref.deed == Deed::Torque && ofStep(step, ref.code))))
                return true;
        const auto found = named(ref);
        return std::any_of(found.begin(), found.end(), [&](std::size_t node) { return nodes_[node].isOff; });
    }

    [[nodiscard]] bool canBeLeft(const Node& node) const {
        return node.kind == ActKind::Torque || node.kind == ActKind::On ||
               (node.kind == ActKind::Job && comesLast(node.job)) ||
               (node.doing != nullptr && node.doing->comes == Comes::After);
    }

    bool leave(std::size_t number) {
        if (number == kNone || nodes_[number].isOff || !canBeLeft(nodes_[number]))
            return false;
        nodes_[number].isOff = true;
        return true;
    }

    // With a step stays off what it stands on, and what would be torqued or done when that is back on.
    bool leaveWithSteps() {
        bool more = false;
        for (std::size_t step = 0; step < t_.steps.size(); ++step) {
            if (on_[step] == kNone || !nodes_[on_[step]].isOff)
                continue;
            for (std::size_t below = 0; below < t_.steps.size(); ++below)
                more = (t_.under[step][below] && leave(on_[below])) || more;
            for (std::size_t at = 0; at < nodes_.size(); ++at) {
                const auto& after = nodes_[at].after;
                if (nodes_[at].kind != ActKind::Job && nodes_[at].kind != ActKind::On &&
                    std::find(after.begin(), after.end(), on_[step]) != after.end())
                    more = leave(at) || more;
            }
        }
        return more;
    }

    // The axle is not torqued with the weight on while the machine stays on the stand; the cover stays off
    // over a nut that could not be torqued; and what a step puts on for a torque of its own stays off without
    // that: a chain, while its sprocket nut waits for the wheel.
    void leaveOutWhatWaitsInVain() {
        for (bool more = true; more;) {
            more = false;
            eachEdge([&](const upkeep::Edge& edge) {
                if (isAway(edge.earlier))
                    for (const std::size_t later : named(edge.later))
                        more = leave(later) || more;
            });
            for (std::size_t step = 0; step < t_.steps.size(); ++step)
                for (const upkeep::Edge& edge : t_.steps[step]->edges)
                    if (edge.earlier == ActRef{Deed::On, t_.steps[step]->code} &&
                        edge.later.deed == Deed::Torque && isAway(edge.later))
                        more = leave(on_[step]) || more;
            more = leaveWithSteps() || more;
        }
    }

    void bindLooks() {
        for (std::size_t job = 0; job < jobs_.size(); ++job) {
            if (jobs_[job].definition == nullptr)
                continue;
            for (const base::Code& joint : jobs_[job].definition->joints) {
                if (!isLook(job, joint.code))
                    continue;
                if (const auto torque = torques_.find(joint.code); torque != torques_.end())
                    before(torque->second, job_[job]);
                for (std::size_t step = 0; step < t_.steps.size(); ++step)
                    if (ofStep(step, joint.code))
                        before(on_[step], job_[job]);
            }
        }
    }

    [[nodiscard]] bool comesLast(std::size_t job) const {
        return jobs_[job].definition != nullptr && jobs_[job].definition->comesLast;
    }

    void bindLast() {
        for (std::size_t job = 0; job < jobs_.size(); ++job) {
            if (!comesLast(job))
                continue;
            for (const std::size_t off : off_)
                before(off, job_[job]);
            std::size_t rank = last_;
            for (std::size_t step = 0; step < t_.steps.size(); ++step)
                if (t_.reach[job][step] && on_[step] != kNone)
                    rank = std::min(rank, nodes_[on_[step]].rank - kMove + kLoosen);
            nodes_[job_[job]].rank = rank;
            const std::vector<bool> waits = descendantsOf(nodes_, job_[job]);
            for (std::size_t other = 0; other < jobs_.size(); ++other)
                if (!comesLast(other) && !waits[job_[other]])
                    before(job_[other], job_[job]);
        }
    }

    // The engine is run when all is done but what waits for that run.
    void bindRuns() {
        for (std::size_t run = 0; run < nodes_.size(); ++run) {
            if (nodes_[run].kind != ActKind::Run)
                continue;
            const std::vector<bool> waits = descendantsOf(nodes_, run);
            for (std::size_t other = 0; other < nodes_.size(); ++other)
                if (!waits[other] && other != run && nodes_[other].kind != ActKind::Run)
                    before(other, run);
        }
    }

    [[nodiscard]] BodyState stateOf(const Node& node) const {
        if (node.kind == ActKind::Off)
            return t_.steps[node.step]->bodyState;
        return node.kind == ActKind::Job ? jobs_[node.job].bodyState : BodyState::Any;
    }

    [[nodiscard]] std::vector<std::size_t> all(ActKind kind, BodyState state) const {
        std::vector<std::size_t> found;
        for (std::size_t at = 0; at < nodes_.size(); ++at)
            if (nodes_[at].kind == kind && stateOf(nodes_[at]) == state)
                found.push_back(at);
        return found;
    }

    // The level of what was drained, as a job of its own: it is looked at when that is in again.
    [[nodiscard]] bool waitsForARefill(std::size_t job, const std::vector<std::size_t>& drains) const {
        return std::any_of(drains.begin(), drains.end(), [&](std::size_t drain) {
            const std::size_t refill = on_[nodes_[drain].step];
            return refill != kNone && descendantsOf(nodes_, refill)[job];
        });
    }

    // Run; what drains warm before anything else is opened; warm work; then the rest, which if it wants the
    // engine cold waits for that.
    void bindWarmStart() {
        const auto drains = all(ActKind::Off, BodyState::Warm);
        auto warmJobs = all(ActKind::Job, BodyState::Warm);
        std::erase_if(warmJobs, [&](std::size_t job) { return waitsForARefill(job, drains); });
        const std::vector<bool> first = ancestorsOf(nodes_, drains);
        std::vector<std::size_t> hot = drains;
        hot.insert(hot.end(), warmJobs.begin(), warmJobs.end());
        const std::vector<bool> early = ancestorsOf(nodes_, hot);
        const std::size_t count = nodes_.size();
        Node run{.kind = ActKind::Run};
        const std::size_t begin = add(std::move(run));
        Node wait{.kind = ActKind::Wait};
        wait.rank = last_;
        wait.isPulled = true;
        const std::size_t cold = add(std::move(wait));
        for (const std::size_t each : hot)
            before(each, cold);
        bool isWanted = false;
        for (std::size_t at = 0; at < count; ++at) {
            before(begin, at);
            if (!first[at])
                for (const std::size_t drain : drains)
                    before(drain, at);
            if (early[at])
                continue;
            for (const std::size_t each : hot)
                before(each, at);
            if (stateOf(nodes_[at]) == BodyState::Cold || wantCold_.contains(at)) {
                before(cold, at);
                isWanted = true;
            }
        }
        if (!isWanted)
            nodes_.pop_back();
    }

    const Teardown& t_;
    std::span<const Job> jobs_;
    RoundTerms terms_;
    std::vector<Node> nodes_;
    std::vector<std::size_t> off_;
    std::vector<std::size_t> on_;
    std::vector<std::size_t> job_;
    std::size_t last_ = 0;  ///< behind the last rank of the plain order
    std::map<std::string, std::size_t> doings_;
    std::set<std::size_t> wantCold_;  ///< doings before a step that wants the engine cold: the fuel shut off
    std::map<std::string, std::size_t> cracks_;
    std::map<std::string, std::size_t> torques_;
};

}  // namespace

base::Result<std::vector<Node>> orderOfActs(const Teardown& teardown, std::span<const Job> jobs,
                                            const RoundTerms& terms) {
    return sorted(Builder(teardown, jobs, terms).build(), teardown, jobs);
}

}  // namespace wm::weekend
