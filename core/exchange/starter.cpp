// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/starter.h"

#include <fmt/format.h>

#include <array>
#include <map>
#include <set>

#include "core/exchange/amount.h"
#include "core/exchange/row_json.h"
#include "core/weekend/check_order.h"

namespace wm::exchange {

using base::Fault;
using base::refuse;
using nlohmann::json;
using upkeep::Counter;

namespace {

base::Result<Amount> readAmount(const json& value) {
    std::string text;
    if (auto read = readJson(value, text); !read)
        return tl::unexpected(read.error());
    return parseAmount(text);
}

// {"every": "15 h", "first": "5 h", "allowance": "2 h", "hard": false}; the unit says which counter.
Read readLimit(const json& value, upkeep::Limit& into) {
    if (!value.is_object())
        return refuseType(value, "object");
    std::vector<std::string_view> taken;
    for (const std::string_view key : {"every", "first", "allowance"}) {
        const auto at = value.find(key);
        if (at == value.end()) {
            if (key == "every")
                return refuse(Fault::Malformed, "every", {}, "this key");
            continue;
        }
        taken.push_back(key);
        const auto amount = readAmount(*at);
        if (!amount)
            return tl::unexpected(inside(key, amount.error()));
        if (amount->count < 1)
            return refuse(Fault::NotPositive, std::string(key), at->get<std::string>());
        if (key != "every" && amount->counter != into.counter)
            return refuse(Fault::WrongUnit, std::string(key), at->get<std::string>(),
                          std::string(base::nameOf(into.counter)));
        into.counter = amount->counter;
        (key == "every"   ? into.every
         : key == "first" ? into.first.emplace()
                          : into.allowance) = amount->count;
    }
    if (const auto hard = value.find("hard"); hard != value.end()) {
        taken.push_back("hard");
        if (auto read = readJson(*hard, into.hard); !read)
            return tl::unexpected(inside("hard", read.error()));
    }
    if (into.hard && into.allowance > 0)
        return refuse(Fault::Inconsistent, "allowance", {}, "a hard limit has no allowance");
    return refuseOtherKeys(value, taken);
}

// "at once", "next outing", "after 2 h", "after 30 days"
Read readDue(const json& value, upkeep::FollowUpRule& into) {
    std::string text;
    if (auto read = readJson(value, text); !read)
        return read;
    const auto refused =
        refuse(Fault::Unknown, {}, excerpt(text), "at once, next outing, after 2 h or after 30 days");
    if (text == "at once" || text == "next outing") {
        into.when = text == "at once" ? upkeep::When::AtOnce : upkeep::When::NextOuting;
        return {};
    }
    if (!text.starts_with("after "))
        return refused;
    const auto amount = parseAmount(std::string_view(text).substr(6));
    if (!amount || (amount->counter != Counter::Hours && amount->counter != Counter::Days))
        return refused;
    into.when = amount->counter == Counter::Hours ? upkeep::When::AfterHours : upkeep::When::AfterDays;
    into.amount = amount->count;
    return into.amount > 0 ? Read{} : refuse(Fault::NotPositive, {}, excerpt(text));
}

Read readFollowUp(const json& value, upkeep::FollowUpRule& into) {
    if (!value.is_object())
        return refuseType(value, "object");
    std::vector<std::string_view> taken;
    const auto take = [&](std::string_view key, auto&& reader) -> Read {
        const auto at = value.find(key);
        if (at == value.end())
            return key == "code" ? Read{} : refuse(Fault::Malformed, std::string(key), {}, "this key");
        taken.push_back(key);
        const Read read = reader(*at);
        return read ? read : tl::unexpected(inside(key, read.error()));
    };
    return take("what", [&](const json& at) { return readJson(at, into.what); })
        .and_then([&] { return take("code", [&](const json& at) { return readJson(at, into.code); }); })
        .and_then([&] { return take("due", [&](const json& at) { return readDue(at, into); }); })
        .and_then([&] { return refuseOtherKeys(value, taken); });
}

// "crack rear-axle-nut"
Read readActRef(const json& value, upkeep::ActRef& into) {
    std::string text;
    if (auto read = readJson(value, text); !read)
        return read;
    const std::size_t space = text.find(' ');
    const auto deed = base::fromName<upkeep::Deed>(text.substr(0, space));
    if (!deed || space == std::string::npos || space + 1 == text.size())
        return refuse(Fault::Unknown, {}, excerpt(text), "crack, off, do, job, on or torque, and a code");
    into = {*deed, text.substr(space + 1)};
    return {};
}

// {"earlier": "crack rear-axle-nut", "later": "off on-stand"}
Read readEdge(const json& value, upkeep::Edge& into) {
    if (!value.is_object())
        return refuseType(value, "object");
    const auto take = [&](const char* key, upkeep::ActRef& ref) -> Read {
        const auto at = value.find(key);
        if (at == value.end())
            return refuse(Fault::Malformed, key, {}, "this key");
        const Read read = readActRef(*at, ref);
        return read ? read : tl::unexpected(inside(key, read.error()));
    };
    return take("earlier", into.earlier).and_then([&] { return take("later", into.later); }).and_then([&] {
        return refuseOtherKeys(value, {"earlier", "later"});
    });
}

struct InStarter {
    static constexpr bool kOmittedIsDefault = true;
    static constexpr bool leftOut(std::string_view key) {
        constexpr std::array<std::string_view, 16> kKeys{
            "id",      "entered",     "task",        "step",        "joint",    "machine",
            "line",    "torque",      "torque_high", "confirmed",   "typed_by", "checked_by",
            "weights", "shared_from", "shared_to",   "from_starter"};
        for (const std::string_view out : kKeys)
            if (key == out)
                return true;
        return key == "valid_from";
    }
    static Read read(const json& value, upkeep::Limit& into) { return readLimit(value, into); }
    static Read read(const json& value, upkeep::FollowUpRule& into) { return readFollowUp(value, into); }
    static Read read(const json& value, upkeep::Edge& into) { return readEdge(value, into); }
};

Read checkText(std::string_view field, const std::string& text) {
    return base::parseName(field, text).map([](const std::string&) {});
}

Read checkCount(std::string_view field, std::int64_t count, std::int64_t least) {
    if (count < least)
        return refuse(least > 0 ? Fault::NotPositive : Fault::Negative, std::string(field),
                      std::to_string(count));
    return count > kMostPieces ? refuse(Fault::TooLarge, std::string(field), std::to_string(count),
                                        std::to_string(kMostPieces))
                               : Read{};
}

using Codes = std::set<std::string, std::less<>>;

// What can be said of one definition without looking at the others.
Read checkDoings(const std::vector<upkeep::Doing>& doings) {
    Codes codes;
    for (std::size_t i = 0; i < doings.size(); ++i) {
        const auto at = [&](const Read& read) {
            return tl::unexpected(inside("doings", inside(i, read.error())));
        };
        if (auto read = checkText("code", doings[i].code); !read)
            return at(read);
        if (!codes.insert(doings[i].code).second)
            return refuse(Fault::Duplicate, base::Place("code").within("doings", i), doings[i].code);
        if (auto read = checkText("what", doings[i].what); !read)
            return at(read);
        if (auto read = checkCount("minutes", doings[i].minutes.count(), 0); !read)
            return at(read);
    }
    return {};
}

Read checkAlone(const weekend::StepVersion& step) {
    return checkText("name", step.name)
        .and_then([&] { return checkDoings(step.doings); })
        .and_then([&] { return checkCount("off_minutes", step.off.count(), 0); })
        .and_then([&] { return checkCount("on_minutes", step.on.count(), 0); })
        .and_then([&]() -> Read {
            if (!step.looseBefore.empty() && step.breakLoose.empty())
                return refuse(Fault::Empty, "break_loose");
            return {};
        });
}

Read checkAlone(const fastening::JointVersion& joint) {
    const bool everyNth = joint.sequence == fastening::Sequence::EveryNth;
    return checkText("name", joint.name)
        .and_then([&] { return checkCount("count", joint.count, 1); })
        .and_then([&] { return checkCount("sequence_step", joint.sequenceStep, everyNth ? 1 : 0); });
}

Read checkAlone(const upkeep::TaskVersion& task) {
    for (std::size_t i = 0; i < task.kit.size(); ++i)
        if (auto read = checkText("what", task.kit[i].what).and_then([&] {
                return checkCount("amount", task.kit[i].amount, 1);
            });
            !read)
            return tl::unexpected(inside("kit", inside(i, read.error())));
    for (std::size_t i = 0; i < task.measures.size(); ++i) {
        const upkeep::MeasurePoint& point = task.measures[i];
        if (auto read = checkText("name", point.name); !read)
            return tl::unexpected(inside("measures", inside(i, read.error())));
        if ((point.least || point.most) && point.source.empty())
            return refuse(Fault::Empty, fmt::format("measures[{}].source", i));
    }
    for (std::size_t i = 0; i < task.triggers.size(); ++i)
        if ((task.triggers[i].happening == upkeep::Happening::Job) == task.triggers[i].code.empty())
            return refuse(Fault::Inconsistent, base::Place("code").within("triggers", i),
                          task.triggers[i].code);
    if (task.nthOf.empty() != (task.nth == 0))
        return refuse(Fault::Inconsistent, "nth", std::to_string(task.nth));
    if (task.extra.empty() != (task.everyNth == 0))
        return refuse(Fault::Inconsistent, "every_nth", std::to_string(task.everyNth));
    return checkText("name", task.name)
        .and_then([&] { return checkDoings(task.doings); })
        .and_then([&] { return checkCount("minutes", task.minutes.count(), 0); })
        .and_then([&] { return checkCount("nth", task.nth, 0); })
        .and_then([&] { return checkCount("every_nth", task.everyNth, 0); });
}

template <class T>
base::Result<Codes> collectCodes(const std::vector<T>& definitions) {
    Codes codes;
    for (std::size_t i = 0; i < definitions.size(); ++i) {
        const std::string& code = definitions[i].code;
        const base::Place field = base::Place("code").within("", i);
        if (auto read = checkText("code", code); !read)
            return tl::unexpected(inside(i, read.error()));
        if (base::codeFromName(code) != code)
            return refuse(Fault::Malformed, field, excerpt(code), base::codeFromName(code));
        if (!codes.insert(code).second)
            return refuse(Fault::Duplicate, field, code);
    }
    return codes;
}

Read mustBe(const Codes& known, const base::Place& field, const std::string& code) {
    return known.contains(code) ? Read{} : refuse(Fault::Unknown, field, excerpt(code));
}

template <class Child>
Read allIn(const Codes& known, std::string_view field, const std::vector<Child>& children) {
    for (std::size_t i = 0; i < children.size(); ++i)
        if (auto read = mustBe(known, base::Place().within(field, i), children[i].code);
            !read && !children[i].code.empty())
            return read;
    return {};
}

Read jobsIn(const Codes& tasks, const std::vector<upkeep::MeasurePoint>& points) {
    for (std::size_t i = 0; i < points.size(); ++i)
        if (auto read = mustBe(tasks, base::Place("job").within("measures", i), points[i].job);
            !read && !points[i].job.empty())
            return read;
    return {};
}

Codes doingsOf(const Starter& starter) {
    Codes codes;
    const auto add = [&](const auto& definitions) {
        for (const auto& definition : definitions)
            for (const upkeep::Doing& doing : definition.doings)
                codes.insert(doing.code);
    };
    add(starter.steps);
    add(starter.tasks);
    return codes;
}

// What the definitions say of one another.
struct References {
    Codes steps;
    Codes joints;
    Codes tasks;
    Codes doings;

    [[nodiscard]] const Codes& codesOf(upkeep::Deed deed) const {
        switch (deed) {
            case upkeep::Deed::Crack:
            case upkeep::Deed::Torque:
                return joints;
            case upkeep::Deed::Do:
                return doings;
            case upkeep::Deed::Job:
                return tasks;
            case upkeep::Deed::Off:
            case upkeep::Deed::On:
                break;
        }
        return steps;
    }
    [[nodiscard]] Read check(const std::vector<upkeep::Edge>& edges) const {
        for (std::size_t i = 0; i < edges.size(); ++i) {
            const auto at = [&](const char* key) { return base::Place(key).within("edges", i); };
            if (edges[i].earlier == edges[i].later)
                return refuse(Fault::Cycle, at("later"), edges[i].later.code);
            if (auto read = mustBe(codesOf(edges[i].earlier.deed), at("earlier"), edges[i].earlier.code);
                !read)
                return read;
            if (auto read = mustBe(codesOf(edges[i].later.deed), at("later"), edges[i].later.code); !read)
                return read;
        }
        return {};
    }

    [[nodiscard]] Read check(const weekend::StepVersion& step) const {
        return allIn(steps, "needs", step.needs)
            .and_then([&] { return allIn(steps, "loose_before", step.looseBefore); })
            .and_then([&] { return allIn(joints, "joints", step.joints); })
            .and_then([&] { return check(step.edges); })
            .and_then([&] { return allIn(tasks, "follow_ups", step.followUps); });
    }
    [[nodiscard]] static Read check(const fastening::JointVersion& /*joint*/) { return {}; }
    [[nodiscard]] Read check(const upkeep::TaskVersion& task) const {
        return allIn(steps, "steps", task.steps)
            .and_then([&] { return allIn(joints, "joints", task.joints); })
            .and_then([&] { return check(task.edges); })
            .and_then([&] { return allIn(tasks, "triggers", task.triggers); })
            .and_then([&] { return allIn(tasks, "follow_ups", task.followUps); })
            .and_then([&] { return jobsIn(tasks, task.measures); })
            .and_then([&] { return task.nthOf.empty() ? Read{} : mustBe(tasks, "nth_of", task.nthOf); });
    }
};

template <class T>
Read checkAll(const References& references, const std::vector<T>& definitions) {
    for (std::size_t i = 0; i < definitions.size(); ++i)
        if (auto read = checkAlone(definitions[i]).and_then([&] { return references.check(definitions[i]); });
            !read)
            return tl::unexpected(inside(i, read.error()));
    return {};
}

// Access steps that need each other can never come off.
Read checkNeeds(const std::vector<weekend::StepVersion>& steps) {
    std::map<std::string_view, std::set<std::string_view>> waiting;
    for (const weekend::StepVersion& step : steps)
        for (const weekend::Need& need : step.needs)
            waiting[step.code].insert(need.code);
    for (bool removed = true; removed;) {
        removed = false;
        for (auto step = waiting.begin(); step != waiting.end();) {
            std::erase_if(step->second, [&](std::string_view need) { return !waiting.contains(need); });
            removed = removed || step->second.empty();
            step = step->second.empty() ? waiting.erase(step) : std::next(step);
        }
    }
    return waiting.empty() ? Read{} : refuse(Fault::Cycle, "steps", std::string(waiting.begin()->first));
}

// Edges that all hold in one plan.
Read checkOrder(const Starter& starter) {
    std::vector<const weekend::StepVersion*> steps;
    for (const weekend::StepVersion& step : starter.steps)
        steps.push_back(&step);
    std::vector<const upkeep::TaskVersion*> tasks;
    for (const upkeep::TaskVersion& task : starter.tasks)
        tasks.push_back(&task);
    const auto order = weekend::checkOrder(steps, tasks);
    return order || order.error().fault != Fault::Cycle ? Read{} : tl::unexpected(order.error());
}

template <class T>
void markSource(std::vector<T>& definitions) {
    for (T& definition : definitions)
        if (definition.source.empty())
            definition.source = kCommonPractice;
}

Read checkReferences(const Starter& starter) {
    const auto steps = collectCodes(starter.steps);
    if (!steps)
        return tl::unexpected(inside("steps", steps.error()));
    const auto joints = collectCodes(starter.joints);
    if (!joints)
        return tl::unexpected(inside("joints", joints.error()));
    const auto tasks = collectCodes(starter.tasks);
    if (!tasks)
        return tl::unexpected(inside("tasks", tasks.error()));
    const References references{*steps, *joints, *tasks, doingsOf(starter)};
    if (auto read = checkAll(references, starter.steps); !read)
        return tl::unexpected(inside("steps", read.error()));
    if (auto read = checkAll(references, starter.joints); !read)
        return tl::unexpected(inside("joints", read.error()));
    if (auto read = checkAll(references, starter.tasks); !read)
        return tl::unexpected(inside("tasks", read.error()));
    return checkNeeds(starter.steps).and_then([&] { return checkOrder(starter); });
}

}  // namespace

base::Result<Starter> readStarter(std::string_view text) {
    const auto root = parseJson(text);
    if (!root)
        return tl::unexpected(root.error());
    if (auto read = checkFormat(*root, kStarterFormat); !read)
        return tl::unexpected(read.error());
    Starter starter;
    std::vector<std::string_view> taken{"format"};
    const auto take = [&](std::string_view key, auto&& reader) -> Read {
        const auto at = root->find(key);
        if (at == root->end())
            return refuse(Fault::Malformed, std::string(key), {}, "this key");
        taken.push_back(key);
        const Read read = reader(*at);
        return read ? read : tl::unexpected(inside(key, read.error()));
    };
    const Read read =
        take("name", [&](const json& at) { return readJson(at, starter.name); })
            .and_then(
                [&] { return take("about", [&](const json& at) { return readJson(at, starter.about); }); })
            .and_then([&] {
                return take("steps", [&](const json& at) { return readList<InStarter>(at, starter.steps); });
            })
            .and_then([&] {
                return take("joints",
                            [&](const json& at) { return readList<InStarter>(at, starter.joints); });
            })
            .and_then([&] {
                return take("tasks", [&](const json& at) { return readList<InStarter>(at, starter.tasks); });
            })
            .and_then([&] { return refuseOtherKeys(*root, taken); })
            .and_then([&] { return checkText("name", starter.name); })
            .and_then([&] { return checkReferences(starter); });
    if (!read)
        return tl::unexpected(read.error());
    markSource(starter.steps);
    markSource(starter.joints);
    markSource(starter.tasks);
    return starter;
}

}  // namespace wm::exchange
