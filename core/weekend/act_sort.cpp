// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/act_sort.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace wm::weekend {

namespace {

std::string nameOf(const Node& node, const Teardown& t, std::span<const Job> jobs) {
    switch (node.kind) {
        case ActKind::BreakLoose:
            return "break loose " + t.steps[node.step]->code;
        case ActKind::Off:
            return "off " + t.steps[node.step]->code;
        case ActKind::On:
            return "on " + t.steps[node.step]->code;
        case ActKind::Crack:
            return "crack " + node.joint;
        case ActKind::Torque:
            return "torque " + node.joint;
        case ActKind::Job:
            return "job " + (jobs[node.job].definition != nullptr ? jobs[node.job].definition->code
                                                                  : jobs[node.job].name);
        case ActKind::Do:
        case ActKind::Run:
            return node.doing != nullptr ? "do " + node.doing->code : "run";
        case ActKind::Wait:
            return "wait";
        case ActKind::SafeStop:
            break;
    }
    return {};
}

// By depth: an act is written when all that it waits for is.
class Sorter {
  public:
    explicit Sorter(const std::vector<Node>& nodes) : nodes_(nodes), seen_(nodes.size(), Seen::No) {}

    // False: there is a cycle, and `path` ends with it.
    bool visit(std::size_t node) {
        if (seen_[node] == Seen::Done)
            return true;
        path_.push_back(node);
        if (seen_[node] == Seen::Entered)
            return false;
        seen_[node] = Seen::Entered;
        for (const std::size_t before : nodes_[node].after)
            if (!visit(before))
                return false;
        seen_[node] = Seen::Done;
        path_.pop_back();
        order_.push_back(node);
        return true;
    }

    [[nodiscard]] const std::vector<std::size_t>& order() const { return order_; }
    // From the act that waits for itself back to it, each before the next.
    [[nodiscard]] std::vector<std::size_t> cycle() const {
        const auto begin = std::find(path_.begin(), path_.end(), path_.back());
        return {path_.rbegin(), std::make_reverse_iterator(begin)};
    }

  private:
    enum class Seen : std::uint8_t { No, Entered, Done };
    const std::vector<Node>& nodes_;
    std::vector<Seen> seen_;
    std::vector<std::size_t> path_;
    std::vector<std::size_t> order_;
};

// From `from` by the fewest acts back to it, each before the next; empty if it does not wait for itself.
std::vector<std::size_t> shortestBack(const std::vector<Node>& nodes, std::size_t from) {
    const std::size_t none = nodes.size();
    std::vector<std::size_t> later(nodes.size(), none);
    std::vector<std::size_t> open{from};
    for (std::size_t at = 0; at < open.size(); ++at)
        for (const std::size_t before : nodes[open[at]].after) {
            if (later[before] != none)
                continue;
            later[before] = open[at];
            if (before != from) {
                open.push_back(before);
                continue;
            }
            std::vector<std::size_t> way{from};
            do
                way.push_back(later[way.back()]);
            while (way.back() != from);
            return way;
        }
    return {};
}

// Of a circle the shortest one that goes through any of its acts: that is soonest understood.
std::vector<std::size_t> shortened(std::vector<std::size_t> circle, const std::vector<Node>& nodes) {
    for (const std::size_t each : std::vector<std::size_t>(circle))
        if (auto back = shortestBack(nodes, each); !back.empty() && back.size() < circle.size())
            circle = std::move(back);
    return circle;
}

void mark(std::size_t from, const std::vector<std::vector<std::size_t>>& next, std::vector<bool>& seen) {
    std::vector<std::size_t> open{from};
    while (!open.empty()) {
        const std::size_t at = open.back();
        open.pop_back();
        if (seen[at])
            continue;
        seen[at] = true;
        open.insert(open.end(), next[at].begin(), next[at].end());
    }
}

}  // namespace

std::vector<bool> descendantsOf(const std::vector<Node>& nodes, std::size_t from) {
    std::vector<std::vector<std::size_t>> next(nodes.size());
    for (std::size_t at = 0; at < nodes.size(); ++at)
        for (const std::size_t before : nodes[at].after)
            next[before].push_back(at);
    std::vector<bool> seen(nodes.size(), false);
    mark(from, next, seen);
    return seen;
}

std::vector<bool> ancestorsOf(const std::vector<Node>& nodes, const std::vector<std::size_t>& of) {
    std::vector<std::vector<std::size_t>> next;
    for (const Node& node : nodes)
        next.push_back(node.after);
    std::vector<bool> seen(nodes.size(), false);
    for (const std::size_t each : of)
        mark(each, next, seen);
    return seen;
}

base::Result<std::vector<Node>> sorted(std::vector<Node> nodes, const Teardown& teardown,
                                       std::span<const Job> jobs) {
    Sorter any(nodes);
    for (std::size_t at = 0; at < nodes.size(); ++at)
        if (!any.visit(at)) {
            std::string names;
            for (const std::size_t each : shortened(any.cycle(), nodes))
                names += (names.empty() ? "" : ", ") + nameOf(nodes[each], teardown, jobs);
            return base::refuse(base::Fault::Cycle, "edges", names);
        }
    // An act has no earlier place than what it waits for; but what is only pulled forward sets no place.
    std::vector<std::size_t> floor(nodes.size(), 0);
    for (const std::size_t at : any.order()) {
        for (const std::size_t before : nodes[at].after)
            floor[at] = std::max(floor[at], floor[before]);
        nodes[at].rank = std::max(nodes[at].rank, floor[at]);
        if (!nodes[at].isPulled)
            floor[at] = nodes[at].rank;
    }
    const auto byRank = [&](std::size_t a, std::size_t b) { return nodes[a].rank < nodes[b].rank; };
    for (Node& node : nodes)
        std::stable_sort(node.after.begin(), node.after.end(), byRank);
    std::vector<std::size_t> all(nodes.size());
    std::iota(all.begin(), all.end(), 0U);
    std::stable_sort(all.begin(), all.end(), byRank);
    Sorter ranked(nodes);
    for (const std::size_t at : all)
        ranked.visit(at);
    std::vector<Node> result;
    for (const std::size_t at : ranked.order())
        result.push_back(nodes[at]);
    return result;
}

}  // namespace wm::weekend
