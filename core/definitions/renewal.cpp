// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/definitions/renewal.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string_view>
#include <utility>

#include "core/calendar/in_force.h"

namespace wm::definitions {

using fastening::JointVersion;
using upkeep::TaskVersion;
using weekend::StepVersion;

namespace {

constexpr std::array kGroups{RenewalGroup::Order, RenewalGroup::NewTasks, RenewalGroup::Intervals,
                             RenewalGroup::Words};

// To which group a field belongs; a field that stands in no list is the machine's own: its source, the page,
// the torque, whether it is confirmed.
struct FieldGroup {
    std::string_view field;
    RenewalGroup group;
};
constexpr std::array kOfSteps{FieldGroup{"off_minutes", RenewalGroup::Order},
                              FieldGroup{"on_minutes", RenewalGroup::Order},
                              FieldGroup{"needs", RenewalGroup::Order},
                              FieldGroup{"break_loose", RenewalGroup::Order},
                              FieldGroup{"loose_before", RenewalGroup::Order},
                              FieldGroup{"joints", RenewalGroup::Order},
                              FieldGroup{"frees", RenewalGroup::Order},
                              FieldGroup{"doings", RenewalGroup::Order},
                              FieldGroup{"edges", RenewalGroup::Order},
                              FieldGroup{"body_state", RenewalGroup::Order},
                              FieldGroup{"leaves_unrideable", RenewalGroup::Order},
                              FieldGroup{"follow_ups", RenewalGroup::Intervals},
                              FieldGroup{"name", RenewalGroup::Words},
                              FieldGroup{"refit", RenewalGroup::Words},
                              FieldGroup{"cautions", RenewalGroup::Words}};
constexpr std::array kOfJoints{
    FieldGroup{"kind", RenewalGroup::Order}, FieldGroup{"position", RenewalGroup::Order},
    FieldGroup{"held", RenewalGroup::Order}, FieldGroup{"sequence", RenewalGroup::Order},
    FieldGroup{"name", RenewalGroup::Words}, FieldGroup{"renew", RenewalGroup::Words}};
constexpr std::array kOfTasks{FieldGroup{"position", RenewalGroup::Order},
                              FieldGroup{"steps", RenewalGroup::Order},
                              FieldGroup{"joints", RenewalGroup::Order},
                              FieldGroup{"doings", RenewalGroup::Order},
                              FieldGroup{"edges", RenewalGroup::Order},
                              FieldGroup{"comes_last", RenewalGroup::Order},
                              FieldGroup{"body_state", RenewalGroup::Order},
                              FieldGroup{"sends_out", RenewalGroup::Order},
                              FieldGroup{"renews", RenewalGroup::Order},
                              FieldGroup{"limits", RenewalGroup::Intervals},
                              FieldGroup{"weights", RenewalGroup::Intervals},
                              FieldGroup{"combine", RenewalGroup::Intervals},
                              FieldGroup{"count_from", RenewalGroup::Intervals},
                              FieldGroup{"every_nth", RenewalGroup::Intervals},
                              FieldGroup{"extra", RenewalGroup::Intervals},
                              FieldGroup{"nth_of", RenewalGroup::Intervals},
                              FieldGroup{"nth", RenewalGroup::Intervals},
                              FieldGroup{"triggers", RenewalGroup::Intervals},
                              FieldGroup{"follow_ups", RenewalGroup::Intervals},
                              FieldGroup{"name", RenewalGroup::Words},
                              FieldGroup{"short_name", RenewalGroup::Words},
                              FieldGroup{"consequence", RenewalGroup::Words},
                              FieldGroup{"kit", RenewalGroup::Words},
                              FieldGroup{"measures", RenewalGroup::Words},
                              FieldGroup{"cautions", RenewalGroup::Words},
                              FieldGroup{"minutes", RenewalGroup::Words},
                              FieldGroup{"tools", RenewalGroup::Words},
                              FieldGroup{"how_to", RenewalGroup::Words},
                              FieldGroup{"felt", RenewalGroup::Words}};

template <std::size_t n>
bool isOf(const std::array<FieldGroup, n>& list, std::string_view field, RenewalGroup group) {
    return std::any_of(list.begin(), list.end(),
                       [&](const FieldGroup& each) { return each.field == field && each.group == group; });
}
template <class V>
bool belongs(std::string_view field, RenewalGroup group) {
    if constexpr (std::is_same_v<V, StepVersion>)
        return isOf(kOfSteps, field, group);
    else if constexpr (std::is_same_v<V, JointVersion>)
        return isOf(kOfJoints, field, group);
    else
        return isOf(kOfTasks, field, group);
}

// Whether two lines of a list are about the same thing.
bool isSame(const upkeep::KitLine& a, const upkeep::KitLine& b) {
    return a.what == b.what;
}
bool isSame(const upkeep::MeasurePoint& a, const upkeep::MeasurePoint& b) {
    return a.name == b.name;
}
bool isSame(const weekend::Need& a, const weekend::Need& b) {
    return a.code == b.code;
}
bool isSame(const upkeep::Doing& a, const upkeep::Doing& b) {
    return a.code == b.code;
}
template <class Part>
requires std::is_same_v<Part, base::Code> || std::is_same_v<Part, upkeep::Edge> ||
    std::is_same_v<Part, upkeep::Trigger> || std::is_same_v<Part, upkeep::Caution> ||
    std::is_same_v<Part, upkeep::FollowUpRule>
bool isSame(const Part& a, const Part& b) {
    return a == b;
}

template <class Part>
const Part* lineOf(const std::vector<Part>& parts, const Part& like) {
    const auto at =
        std::find_if(parts.begin(), parts.end(), [&](const Part& part) { return isSame(part, like); });
    return at == parts.end() ? nullptr : &*at;
}

// Line by line: one that the mechanic tied to the shelf, or gave a limit from the manual, stays as it is. The
// limits of an interval are one statement, and no list of lines.
template <class Part>
requires requires(const Part& part) {
    isSame(part, part);
}
std::vector<Part> merged(const std::vector<Part>& base, const std::vector<Part>& now,
                         const std::vector<Part>& mine) {
    std::vector<Part> lines;
    for (const Part& line : now) {
        const Part* before = lineOf(base, line);
        const Part* own = lineOf(mine, line);
        if (own == nullptr && before != nullptr)
            continue;  // struck by the mechanic
        lines.push_back(own == nullptr || (before != nullptr && *own == *before) ? line : *own);
    }
    for (const Part& own : mine) {
        const Part* before = lineOf(base, own);
        if (lineOf(now, own) == nullptr && (before == nullptr || !(*before == own)))
            lines.push_back(own);
    }
    return lines;
}
template <class T>
T merged(const T& base, const T& now, const T& mine) {
    return mine == base ? now : mine;
}

template <class T, class V>
const T& fieldOf(const V& version, std::string_view wanted) {
    const T* found = nullptr;
    V::fields(version, [&](std::string_view name, const auto& field) {
        if constexpr (std::is_same_v<std::decay_t<decltype(field)>, T>)
            if (name == wanted)
                found = &field;
    });
    return *found;
}

// A definition with a starter behind it.
template <class V>
struct Known {
    V base;  ///< as the starter was taken over last
    V mine;  ///< what stands
    V now;   ///< what the starter says now
};

bool isConfirmed(const TaskVersion& mine, RenewalGroup group) {
    return mine.confirmed && group == RenewalGroup::Intervals;
}
bool isConfirmed(const StepVersion& mine, RenewalGroup group) {
    return mine.confirmed && group == RenewalGroup::Order;
}
bool isConfirmed(const JointVersion& /*its torque, which no starter has*/, RenewalGroup /*group*/) {
    return false;
}

// What becomes of the starter's words and of what stands if a group is taken over.
template <class V>
struct Taken {
    V theirs;
    V stands;
    std::vector<std::string> fields{};
    std::vector<std::string> kept{};
};

template <class V>
Taken<V> takenOf(const Known<V>& known, RenewalGroup group) {
    Taken<V> taken{.theirs = known.base, .stands = known.mine};
    const auto follow = [&](std::string_view name, auto& theirs) {
        using T = std::decay_t<decltype(theirs)>;
        const T& now = fieldOf<T>(known.now, name);
        if (!belongs<V>(name, group) || theirs == now)
            return;
        const T base = std::exchange(theirs, now);
        V::fields(taken.stands, [&](std::string_view other, auto& stands) {
            if constexpr (std::is_same_v<std::decay_t<decltype(stands)>, T>) {
                if (other != name)
                    return;
                T next = isConfirmed(known.mine, group) ? stands : merged(base, now, stands);
                (next == stands ? taken.kept : taken.fields).emplace_back(name);
                stands = std::move(next);
            }
        });
    };
    V::fields(taken.theirs, follow);
    return taken;
}

template <class V>
const V* withCode(const std::vector<V>& versions, const std::string& code) {
    const auto at =
        std::find_if(versions.begin(), versions.end(), [&](const V& each) { return each.code == code; });
    return at == versions.end() ? nullptr : &*at;
}

// Of each definition of the machine what stands, and the last words of a starter in it.
template <class V>
struct Stock {
    std::map<std::string, V> mine{};
    std::map<std::string, V> base{};

    Stock(const book::Book& book, MachineId machine) {
        for (const V& version : book.ledger().all<V>()) {
            if (version.machine != machine)
                continue;
            keep(mine, version);
            if (version.fromStarter)
                keep(base, version);
        }
    }
    static void keep(std::map<std::string, V>& map, const V& version) {
        const auto [at, isFirst] = map.emplace(version.code, version);
        if (!isFirst && calendar::supersedes(version, at->second))
            at->second = version;
    }
};

// What the starter says, without what names a task that the machine has not.
class Sayable {
  public:
    Sayable(const Schedule& starter, const std::map<std::string, TaskVersion>& mine,
            const std::map<std::string, StepVersion>& steps, RenewalGroup group) {
        const auto note = [this](const auto& version) {
            for (const upkeep::Doing& doing : version.doings)
                doings_.insert(doing.code);
        };
        for (const auto& [code, task] : mine)
            tasks_.insert(code);
        for (const TaskVersion& task : starter.tasks) {
            if (group == RenewalGroup::NewTasks)
                tasks_.insert(task.code);
            if (tasks_.contains(task.code))
                note(task);
        }
        for (const auto& [code, task] : mine)
            note(task);
        for (const auto& [code, step] : steps)
            note(step);
        for (const StepVersion& step : starter.steps)
            note(step);
    }

    template <class V>
    V operator()(V version) const {
        if constexpr (!std::is_same_v<V, JointVersion>) {
            std::erase_if(version.edges, [this](const upkeep::Edge& edge) {
                return !isThere(edge.earlier) || !isThere(edge.later);
            });
            std::erase_if(version.followUps,
                          [this](const upkeep::FollowUpRule& rule) { return !isTask(rule.code); });
        }
        if constexpr (std::is_same_v<V, TaskVersion>) {
            std::erase_if(version.triggers,
                          [this](const upkeep::Trigger& trigger) { return !isTask(trigger.code); });
            for (upkeep::MeasurePoint& point : version.measures)
                if (!isTask(point.job))
                    point.job.clear();
        }
        return version;
    }

  private:
    [[nodiscard]] bool isTask(const std::string& code) const { return code.empty() || tasks_.contains(code); }
    [[nodiscard]] bool isThere(const upkeep::ActRef& ref) const {
        return ref.deed == upkeep::Deed::Job  ? tasks_.contains(ref.code)
               : ref.deed == upkeep::Deed::Do ? doings_.contains(ref.code)
                                              : true;
    }
    std::set<std::string> tasks_;
    std::set<std::string> doings_;
};

template <class V>
constexpr Difference::Kind kindOf() {
    return std::is_same_v<V, StepVersion>    ? Difference::Kind::Step
           : std::is_same_v<V, JointVersion> ? Difference::Kind::Joint
                                             : Difference::Kind::Task;
}

std::optional<TaskVersion> taskOf(const TaskVersion& task) {
    return task;
}
template <class V>
std::optional<TaskVersion> taskOf(const V& /*other*/) {
    return std::nullopt;
}

// A starter knows no shelf: its lines are tied to the one to which they were tied when it was taken over.
template <class V>
V tied(V now, const V& base) {
    if constexpr (std::is_same_v<V, TaskVersion>)
        for (upkeep::KitLine& line : now.kit)
            if (const auto* before = lineOf(base.kit, line); before != nullptr && !line.line)
                line.line = before->line;
    return now;
}

// Calls `isNew` with what the machine has not, and `isOther` with what it has otherwise.
class Comparison {
  public:
    Comparison(const book::Book& book, MachineId machine, const Schedule& starter)
        : starter_(starter), steps_(book, machine), joints_(book, machine), tasks_(book, machine) {}

    template <class New, class Other>
    void of(RenewalGroup group, New&& isNew, Other&& isOther) const {
        const Sayable say(starter_, tasks_.mine, steps_.mine, group);
        const bool brings = group == RenewalGroup::Order || group == RenewalGroup::NewTasks;
        each(starter_.steps, steps_, group, say, brings, isNew, isOther);
        each(starter_.joints, joints_, group, say, brings, isNew, isOther);
        each(starter_.tasks, tasks_, group, say, group == RenewalGroup::NewTasks, isNew, isOther);
    }

  private:
    template <class V, class New, class Other>
    static void each(const std::vector<V>& versions, const Stock<V>& stock, RenewalGroup group,
                     const Sayable& say, bool brings, New&& isNew, Other&& isOther) {
        for (const V& version : versions) {
            const auto mine = stock.mine.find(version.code);
            if (mine == stock.mine.end()) {
                if (brings)
                    isNew(say(version));
                continue;
            }
            const auto base = stock.base.find(version.code);
            if (base == stock.base.end() || (!mine->second.active && base->second.active))
                continue;
            auto taken =
                takenOf(Known<V>{base->second, mine->second, tied(say(version), base->second)}, group);
            if (!taken.fields.empty())
                isOther(std::move(taken));
        }
    }

    const Schedule& starter_;
    Stock<StepVersion> steps_;
    Stock<JointVersion> joints_;
    Stock<TaskVersion> tasks_;
};

}  // namespace

std::vector<Difference> differences(const book::Book& book, MachineId machine, const Schedule& starter) {
    std::vector<Difference> all;
    const Comparison comparison(book, machine, starter);
    for (const RenewalGroup group : kGroups)
        comparison.of(
            group,
            [&]<class V>(const V& version) {
                // New steps and joints are said once.
                if (group == RenewalGroup::Order || std::is_same_v<V, TaskVersion>)
                    all.push_back(
                        {group, kindOf<V>(), version.code, version.name, true, {}, {}, taskOf(version)});
            },
            [&]<class V>(Taken<V> taken) {
                all.push_back({group, kindOf<V>(), taken.stands.code, taken.stands.name, false,
                               std::move(taken.fields), std::move(taken.kept), taskOf(taken.stands)});
            });
    return all;
}

void take(Definitions& definitions, const book::Book& book, MachineId machine, const Schedule& starter,
          RenewalGroup group) {
    using Words = Definitions::Words;
    Comparison(book, machine, starter)
        .of(
            group,
            [&]<class V>(V version) {
                definitions.add(std::move(version), book.today(), {}, Words::OfStarter);
            },
            [&]<class V>(Taken<V> taken) {
                taken.theirs.validFrom = taken.stands.validFrom = book.today();
                const bool isOwn = !sameWords(taken.theirs, taken.stands);
                definitions.add(std::move(taken.theirs), book.today(), {}, Words::OfStarter);
                if (isOwn)
                    definitions.add(std::move(taken.stands), book.today(), {});
            });
}

}  // namespace wm::definitions
