// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
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

// Moments in order, as whole numbers.
std::int64_t numberOf(Moment moment) {
    return std::int64_t{3} * moment.date.daysSinceEpoch() + static_cast<int>(moment.part);
}

Moment momentOf(std::int64_t number) {
    const std::int64_t part = ((number % 3) + 3) % 3;
    return {Date{static_cast<std::int32_t>((number - part) / 3)}, static_cast<DayPart>(part)};
}

// When the demand of a record came (or comes) due; nothing if not up to `now`. What its subject ran only
// grows, so the first moment of enough is found by halving.
std::optional<Moment> dueAt(const FollowUpRule& rule, Moment origin, std::span<const Atom> atoms,
                            Moment now) {
    if (rule.when == When::AtOnce)
        return origin;
    if (rule.when == When::AfterDays) {
        const Moment due{origin.date.plusDays(static_cast<std::int32_t>(rule.amount)), DayPart::BeforeRiding};
        return due <= now ? std::optional(due) : std::nullopt;
    }
    const auto first =
        std::partition_point(atoms.begin(), atoms.end(), [&](const Atom& a) { return a.to <= origin; });
    const std::span<const Atom> later(first, atoms.end());
    const auto hasCome = [&](Moment when) {
        const auto use = usage::exposure(later, origin, when);
        const auto ridden = use.hours.best.count();
        return (use.outings > 0 || ridden > 0) && (rule.when == When::NextOuting || ridden >= rule.amount);
    };
    if (now <= origin || !hasCome(now))
        return std::nullopt;
    std::int64_t before = numberOf(origin);
    std::int64_t due = numberOf(now);
    while (due - before > 1) {
        const std::int64_t middle = before + (due - before) / 2;
        (hasCome(momentOf(middle)) ? due : before) = middle;
    }
    return momentOf(due);
}

// Of one part of a day what was told before the job that asks was done before it.
bool isSettledBy(const Demand& demand, Moment due, const std::optional<Moment>& until) {
    return std::any_of(demand.settling.begin(), demand.settling.end(), [&](const Record* record) {
        const Moment when = momentOf(*record);
        const bool isEarlier = when == momentOf(*demand.origin) && cameAfter(*demand.origin, *record);
        return record != demand.origin && !isEarlier && when >= due && (!until || when <= *until);
    });
}

// The stretch in which the demand stands now, and whether its time has come; nothing if it stands no more.
std::optional<std::pair<Stretch, bool>> standingNow(const Demand& demand, Moment now) {
    for (const Stretch& stretch : demand.stands) {
        if (stretch.from > now)
            return std::nullopt;
        const bool isOver = stretch.to && *stretch.to <= now;
        const auto upTo = isOver ? *stretch.to : now;
        const auto due = dueAt(demand.rule, stretch.from, demand.atoms, upTo);
        if (due && isSettledBy(demand, *due, upTo))
            return std::nullopt;
        if (!isOver)
            return std::pair(stretch, due.has_value());
    }
    return std::nullopt;
}

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

std::vector<FollowUp> openFollowUps(std::vector<Demand> demands,
                                    std::span<const FollowUpAnswer* const> answers, Date on) {
    const Moment now{on, DayPart::AfterRiding};
    const Answered answered = answeredUpTo(answers, on);
    const auto orderOf = [](const Demand& demand) {
        return std::tuple(momentOf(*demand.origin), demand.origin->entered, demand.origin->id);
    };
    std::erase_if(demands, [&](const Demand& demand) {
        return demand.origin->date > on || demand.stands.empty() || demand.stands.front().from > now;
    });
    std::stable_sort(demands.begin(), demands.end(),
                     [&](const Demand& a, const Demand& b) { return orderOf(a) < orderOf(b); });

    std::vector<FollowUp> open;  // newest first
    std::set<std::tuple<std::string, std::string, std::string, std::optional<ItemId>>> seen;
    for (auto demand = demands.rbegin(); demand != demands.rend(); ++demand) {
        const std::int64_t origin = demand->origin->id.value();
        if (!seen.emplace(demand->because, demand->rule.what, demand->rule.code, demand->item).second ||
            answered.contains({origin, demand->rule.what}))
            continue;
        if (const auto standing = standingNow(*demand, now))
            open.push_back({.machine = demand->machine,
                            .origin = origin,
                            .since = standing->first.from.date,
                            .rule = demand->rule,
                            .because = demand->because,
                            .due = standing->second});
    }
    std::reverse(open.begin(), open.end());
    return open;
}

}  // namespace wm::upkeep
