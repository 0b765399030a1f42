// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <optional>
#include <type_traits>

#include "core/base/circle.h"
#include "core/book/step_effect.h"
#include "core/definitions/definitions.h"
#include "core/picture/consistency.h"
#include "core/weekend/check_order.h"
#include "core/words/nearest.h"

// What steps and tasks say of the order of work: is all of it there, and can it be done.

namespace wm::definitions {

using base::Fault;
using picture::placeIn;
using upkeep::ActRef;
using upkeep::Deed;

namespace {

constexpr std::size_t kMostNamed = 3;

bool usesStep(const std::vector<base::Code>& codes, std::string_view code) {
    return std::any_of(codes.begin(), codes.end(), [code](const auto& c) { return c.code == code; });
}

bool speaksOf(const std::vector<upkeep::Edge>& edges, const ActRef& act) {
    return std::any_of(edges.begin(), edges.end(),
                       [&](const auto& edge) { return edge.earlier == act || edge.later == act; });
}

// The acts that a Cycle of core/weekend names: "off seat, break loose tank, on seat".
struct NamedAct {
    std::string kind{};
    std::string code{};
    /// Nothing for one that no edge can speak of.
    [[nodiscard]] std::optional<ActRef> ref() const {
        const auto deed = base::fromName<Deed>(kind);
        return deed ? std::optional(ActRef{*deed, code}) : std::nullopt;
    }
};

// Of several lines that are part of a circle, the last one was most likely added last.
bool isLater(const base::Place& line, const base::Place& than) {
    return !line.lines.empty() && (than.lines.empty() || line.lines.back().at > than.lines.back().at);
}

std::vector<NamedAct> actsIn(std::string_view cycle) {
    std::vector<NamedAct> acts;
    while (!cycle.empty()) {
        const std::size_t end = std::min(cycle.find(", "), cycle.size());
        const std::string_view act = cycle.substr(0, end);
        const std::size_t blank = act.rfind(' ');
        if (blank == std::string_view::npos)
            acts.push_back({std::string(act), {}});
        else
            acts.push_back({std::string(act.substr(0, blank)), std::string(act.substr(blank + 1))});
        cycle.remove_prefix(std::min(end + 2, cycle.size()));
    }
    return acts;
}

}  // namespace

std::vector<const weekend::StepVersion*> Definitions::steps() const {
    std::vector<const weekend::StepVersion*> steps;
    for (const auto& step : steps_.last)
        steps.push_back(&step);
    return steps;
}

std::vector<const upkeep::Doing*> Definitions::doings() const {
    std::vector<const upkeep::Doing*> all;
    for (const auto& step : steps_.last)
        for (const upkeep::Doing& doing : step.doings)
            all.push_back(&doing);
    for (const auto& task : tasks_.last)
        for (const upkeep::Doing& doing : task.doings)
            all.push_back(&doing);
    return all;
}

std::string Definitions::nameOf(const ActRef& ref) const {
    const auto all = [](const auto& kind) {
        std::vector<const std::decay_t<decltype(kind.last.front())>*> versions;
        for (const auto& version : kind.last)
            versions.push_back(&version);
        return versions;
    };
    return book::nameOf(ref, all(steps_), all(joints_), all(tasks_));
}

bool Definitions::knows(const ActRef& ref) const {
    switch (ref.deed) {
        case Deed::Crack:
        case Deed::Torque:
            return joints_.has(ref.code);
        case Deed::Off:
        case Deed::On:
            return steps_.has(ref.code);
        case Deed::Job:
            return tasks_.has(ref.code);
        case Deed::Do:
            break;
    }
    const auto all = doings();
    return std::any_of(all.begin(), all.end(), [&](const auto* doing) { return doing->code == ref.code; });
}

// What may have been meant, by name.
std::string Definitions::nearest(const ActRef& ref) const {
    std::vector<std::string> names;
    const auto take = [&names](const auto& kind) {
        for (const auto& version : kind.last)
            if (version.active)
                names.push_back(version.name);
    };
    switch (ref.deed) {
        case Deed::Crack:
        case Deed::Torque:
            take(joints_);
            break;
        case Deed::Off:
        case Deed::On:
            take(steps_);
            break;
        case Deed::Job:
            take(tasks_);
            break;
        case Deed::Do:
            for (const upkeep::Doing* doing : doings())
                names.push_back(doing->what);
            break;
    }
    std::string list;
    for (const std::string& name : words::nearest(ref.code, names, kMostNamed))
        list += (list.empty() ? "" : ", ") + name;
    return list;
}

// What is no code at all was typed as a name, and nothing is called that: better said with what may have been
// meant than that it can't be read.
void Definitions::checkTyped(const base::Place& field, const ActRef& ref) {
    check_.that(ref.code.find_first_of(" /") == std::string::npos, Fault::Unknown, field, ref.code,
                nearest(ref));
}

template <class V>
void Definitions::checkTyped(const V& version) {
    const auto codes = [this](std::string_view list, const auto& each, Deed deed) {
        for (std::size_t at = 0; at < each.size(); ++at)
            this->checkTyped(placeIn(list, at, "code"), {deed, each[at].code});
    };
    codes("joints", version.joints, Deed::Torque);
    if constexpr (std::is_same_v<V, weekend::StepVersion>) {
        codes("needs", version.needs, Deed::Off);
        codes("loose_before", version.looseBefore, Deed::Off);
    } else {
        codes("steps", version.steps, Deed::Off);
    }
    for (std::size_t at = 0; at < version.edges.size(); ++at) {
        checkTyped(placeIn("edges", at, "earlier_code"), version.edges[at].earlier);
        checkTyped(placeIn("edges", at, "later_code"), version.edges[at].later);
    }
}
template void Definitions::checkTyped(const weekend::StepVersion&);
template void Definitions::checkTyped(const upkeep::TaskVersion&);

void Definitions::checkStep(const base::Place& field, const std::string& code) {
    check_.that(steps_.hasActive(code), Fault::Unknown, field, code, nearest({Deed::Off, code}));
}

void Definitions::checkEdges(const std::vector<upkeep::Edge>& edges) {
    for (std::size_t at = 0; at < edges.size(); ++at) {
        const auto& [earlier, later] = edges[at];
        check_.that(knows(earlier), Fault::Unknown, placeIn("edges", at, "earlier_code"), earlier.code,
                    nearest(earlier));
        check_.that(knows(later), Fault::Unknown, placeIn("edges", at, "later_code"), later.code,
                    nearest(later));
    }
}

// A step that is put away must not be needed by what stays.
void Definitions::checkUnused(const weekend::StepVersion& step) {
    for (const auto& task : tasks_.last)
        check_.that(!task.active || !usesStep(task.steps, step.code), Fault::Inconsistent, "active",
                    task.name);
    for (const auto& other : steps_.last) {
        if (!other.active)
            continue;
        for (const weekend::Need& need : other.needs)
            check_.that(need.code != step.code, Fault::Inconsistent, "active", other.name);
        check_.that(!usesStep(other.looseBefore, step.code), Fault::Inconsistent, "active", other.name);
    }
}

// A doing that goes must not be spoken of by what stays. What changes as well is told at its own line.
void Definitions::checkGone() {
    const auto check = [this](const Gone& gone, const auto& kind) {
        for (const auto& other : kind.last) {
            const bool isNew = std::any_of(kind.added.begin(), kind.added.end(),
                                           [&](const auto& each) { return each.version.code == other.code; });
            check_.that(!other.active || isNew || !speaksOf(other.edges, {Deed::Do, gone.doing.code}),
                        Fault::Inconsistent, base::Place("doings").within(gone.prefix), gone.doing.what,
                        other.name);
        }
    };
    for (const Gone& gone : gone_)
        if (!knows({Deed::Do, gone.doing.code})) {
            check(gone, steps_);
            check(gone, tasks_);
        }
}

// The circle is shown at the new line that closes it.
void Definitions::checkNeeds() {
    const auto circle = picture::circleOfNeeds(steps());
    if (circle.empty())
        return;
    std::string names;
    base::Place place("needs");
    for (std::size_t at = 0; at < circle.size(); ++at) {
        names += (names.empty() ? "" : base::kBefore) + circle[at]->name;
        for (const auto& each : steps_.added)
            for (std::size_t need = 0; at > 0 && need < each.version.needs.size(); ++need)
                if (each.version.code == circle[at]->code &&
                    each.version.needs[need].code == circle[at - 1]->code)
                    place = placeIn("needs", need, "code").within(each.prefix);
    }
    check_.that(false, Fault::Cycle, place, names);
}

// Where a new version says that one act comes before another, or "edges" if none does.
base::Place Definitions::placeOf(const ActRef& earlier, const ActRef& later) const {
    base::Place place("edges");
    const auto look = [&](const auto& added) {
        for (const auto& each : added)
            for (std::size_t at = 0; at < each.version.edges.size(); ++at)
                if (each.version.edges[at] == upkeep::Edge{earlier, later})
                    place = placeIn("edges", at, "later_code").within(each.prefix);
    };
    look(steps_.added);
    look(tasks_.added);
    return place;
}

// All that is in use can be done in one plan.
void Definitions::checkOrder() {
    std::vector<const upkeep::TaskVersion*> tasks;
    for (const auto& task : tasks_.last)
        tasks.push_back(&task);
    // What names a step that is not there is told where it stands, not here.
    const auto order = weekend::checkOrder(steps(), tasks);
    if (order || order.error().fault != Fault::Cycle || order.error().field != base::Place("edges"))
        return;
    std::vector<NamedAct> acts = actsIn(order.error().given);
    // The check plans each step by itself too; that is no job of the mechanic's.
    std::erase_if(acts, [&](const NamedAct& act) { return act.kind == "job" && !tasks_.has(act.code); });
    std::string names;
    base::Place place("edges");
    for (std::size_t at = 0; at < acts.size(); ++at) {
        const auto ref = acts[at].ref();
        const auto before = at == 0 ? std::nullopt : acts[at - 1].ref();
        if (ref && before)
            if (auto said = placeOf(*before, *ref); isLater(said, place))
                place = std::move(said);
        const bool isStep = acts[at].kind == "break loose";
        const auto what = ref ? ref : isStep ? std::optional(ActRef{Deed::Off, acts[at].code}) : std::nullopt;
        names += (names.empty() ? "" : base::kBefore) + acts[at].kind;
        if (what)
            names += ' ' + nameOf(*what);
    }
    check_.that(false, Fault::Cycle, place, names);
}

}  // namespace wm::definitions
