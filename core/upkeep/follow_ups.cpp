// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "core/upkeep/countdown.h"
#include "core/upkeep/demands.h"

namespace wm::upkeep {

using calendar::Date;
using calendar::DayPart;
using calendar::Moment;
using usage::Atom;

namespace {

// When the demand of a record came (or comes) due; nothing if not up to `now`.
std::optional<Moment> dueAt(const FollowUpRule& rule, Moment origin, std::span<const Atom> atoms,
                            Moment now) {
    if (rule.when == When::AtOnce)
        return origin;
    if (rule.when == When::AfterDays) {
        const Moment due{origin.date.plusDays(static_cast<std::int32_t>(rule.amount)), DayPart::BeforeRiding};
        return due <= now ? std::optional(due) : std::nullopt;
    }
    auto atom =
        std::partition_point(atoms.begin(), atoms.end(), [&](const Atom& a) { return a.to <= origin; });
    std::int64_t ridden = 0;
    for (; atom != atoms.end() && atom->to <= now; ++atom) {
        const auto use = usage::exposure(std::span(&*atom, 1), origin, now);
        if (use.outings == 0 && use.hours.best.count() == 0)
            continue;
        ridden += use.hours.best.count();
        if (rule.when == When::NextOuting || ridden >= rule.amount)
            return atom->to;
    }
    return std::nullopt;
}

using Moments = std::map<std::string, std::vector<std::pair<Moment, RecordId>>>;

// The moments at which each task was done or looked at, in order.
Moments momentsByCode(std::span<const Record* const> records) {
    Moments moments;
    for (const Record* record : records)
        if (record->kind != RecordKind::Baseline)
            moments[record->code].emplace_back(momentOf(*record), record->id);
    for (auto& [code, times] : moments)
        std::sort(times.begin(), times.end());
    return moments;
}

bool wasDone(const Moments& moments, const std::string& code, Moment since, RecordId origin) {
    const auto times = moments.find(code);
    if (code.empty() || times == moments.end())
        return false;
    const auto first = std::partition_point(times->second.begin(), times->second.end(),
                                            [&](const auto& time) { return time.first < since; });
    return std::any_of(first, times->second.end(), [&](const auto& time) { return time.second != origin; });
}

}  // namespace

namespace {

using Answered = std::set<std::pair<std::int64_t, std::string>>;

Answered answeredUpTo(std::span<const FollowUpAnswer* const> answers, Date on) {
    Answered answered;
    for (const FollowUpAnswer* answer : answers)
        if (answer->date <= on)
            answered.emplace(answer->origin, answer->what);
    return answered;
}

}  // namespace

std::vector<FollowUp> openDemands(std::vector<FollowUp> demands,
                                  std::span<const FollowUpAnswer* const> answers, Date on) {
    const Answered answered = answeredUpTo(answers, on);
    std::erase_if(demands, [&](const FollowUp& demand) {
        return demand.since > on || answered.contains({demand.origin, demand.rule.what});
    });
    return demands;
}

std::vector<FollowUp> openFollowUps(MachineId machine, std::span<const Record* const> records,
                                    const RulesOf& rulesOf, std::span<const FollowUpAnswer* const> answers,
                                    std::span<const Atom> atoms, Date on) {
    const Moment now{on, DayPart::AfterRiding};
    const Answered answered = answeredUpTo(answers, on);
    std::vector<const Record*> origins;
    for (const Record* record : records)
        if (record->date <= on)
            origins.push_back(record);
    const Moments done = momentsByCode(origins);
    std::sort(origins.begin(), origins.end(), [](const Record* a, const Record* b) {
        return std::tuple(momentOf(*a), a->entered, a->id) > std::tuple(momentOf(*b), b->entered, b->id);
    });

    std::vector<FollowUp> open;  // newest first
    std::set<std::tuple<std::string, std::string, std::string>> seen;
    for (const Record* record : origins) {
        const auto rules = record->kind == RecordKind::Done ? rulesOf(*record) : decltype(rulesOf(*record)){};
        for (auto at = rules.rbegin(); at != rules.rend(); ++at) {
            const auto& [because, rule] = *at;
            if (!seen.emplace(because, rule.what, rule.code).second ||
                answered.contains({record->id.value(), rule.what}))
                continue;
            const auto due = dueAt(rule, momentOf(*record), atoms, now);
            if (due && wasDone(done, rule.code, *due, record->id))
                continue;
            open.push_back({.machine = machine,
                            .origin = record->id.value(),
                            .since = record->date,
                            .rule = rule,
                            .because = because,
                            .due = due.has_value()});
        }
    }
    std::reverse(open.begin(), open.end());
    return open;
}

}  // namespace wm::upkeep
