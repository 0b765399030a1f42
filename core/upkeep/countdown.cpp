// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/upkeep/countdown.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "core/calendar/in_force.h"
#include "core/upkeep/limits.h"
#include "core/upkeep/stated.h"
#include "core/upkeep/unknown.h"

namespace wm::upkeep {

using base::Fault;
using base::refuse;
using calendar::Date;
using calendar::DayPart;
using calendar::Moment;
using units::Hours;
using usage::Atom;

namespace {

Moment eveningOf(Date date) {
    return {date, DayPart::AfterRiding};
}

auto orderOf(const Record& record) {
    return std::tuple(momentOf(record), record.entered, record.id);
}

std::vector<const Record*> completionsOf(const TaskFacts& facts, Date on) {
    std::vector<const Record*> completions;
    for (const Record* record : facts.records)
        if (record->date <= on && isCompletion(*record, facts.versions, on))
            completions.push_back(record);
    std::sort(completions.begin(), completions.end(),
              [](const Record* a, const Record* b) { return orderOf(*a) < orderOf(*b); });
    return completions;
}

std::span<const Atom> atomsAfter(std::span<const Atom> atoms, std::optional<Moment> after) {
    if (!after)
        return atoms;
    const auto first =
        std::partition_point(atoms.begin(), atoms.end(), [&](const Atom& atom) { return atom.to <= *after; });
    return {first, atoms.end()};
}

// As the version weights them; whole hundredths, rounded once. `rest` of a stated past counts as stated.
usage::HoursBracket weighted(const TaskFacts& facts, const TaskVersion& version, std::optional<Moment> after,
                             Moment upTo, const usage::HoursBracket& rest) {
    return usage::roundedHours(usage::weightedHours(facts.atoms, version.weights, after, upTo)) + rest;
}

// Stated, and counted on from there.
CountBracket countedOn(const TaskFacts& facts, const StatedSince& stated, Counter counter, Date on) {
    CountBracket behind = stated.bracket;
    std::int64_t more = on - stated.upTo;
    if (!isCalendar(counter))
        more = *bracketOf(usage::exposure(facts.atoms, eveningOf(stated.upTo), eveningOf(on)), counter).best;
    behind.low += more;
    for (auto* end : {&behind.best, &behind.high})
        if (*end)
            **end += more;
    return behind;
}

// What a baseline says in place of what was counted; the hours are added up by `countHours`.
void takeStated(Count& count, const TaskFacts& facts, const TaskVersion& version, const Record& last) {
    for (const Limit& limit : version.limits) {
        const Counter counter = limit.counter == Counter::Months ? Counter::Days : limit.counter;
        if (counter == Counter::Hours || (!count.countsOpen && !isCalendar(counter) && last.stated.empty()))
            continue;
        const auto told = count.countsOpen ? facts.told : std::span<const Record* const>{};
        if (const auto stated = statedSince(last, counter, told))
            count.told.push_back({limit.counter, *stated, countedOn(facts, *stated, counter, count.on)});
    }
}

/// Hours that were not counted here, and from when on they were.
struct Uncounted {
    std::optional<Moment> ridingFrom{};
    usage::HoursBracket rest{};
};

// Of a past that was cut by the job nobody knows how much of it came later, unless somebody says it.
Uncounted countHours(Count& count, const TaskFacts& facts, const Record& last,
                     std::span<const Atom>::iterator past) {
    Uncounted some{count.after, {}};
    const auto later = atomsAfter(facts.atoms, count.after);
    if (const auto stated = statedSince(last, Counter::Hours, {})) {
        const auto& low = stated->bracket.low;
        const auto& best = stated->bracket.best;
        const auto& high = stated->bracket.high;
        // The past that was stated is a part of it, wherever it ends.
        some.ridingFrom =
            past != later.end() ? std::max(eveningOf(stated->upTo), past->to) : eveningOf(stated->upTo);
        some.rest = {Hours{low}, Hours{best.value_or(low)},
                     high ? std::optional(Hours{*high}) : std::nullopt};
        count.hoursLikely = best.has_value();
        count.told.push_back({Counter::Hours, *stated, {}});
    } else if (count.after && past != later.end() && last.statedBest) {
        some.ridingFrom = past->to;
        some.rest = restOfPast(past->hours, last);
        count.before.hours = usage::HoursBracket::exactly(*last.statedBest);
    } else {
        count.hoursLikely = !count.after || past == later.end() || past->hours.high == Hours{0};
        return some;
    }
    count.behind.hours = usage::exposure(facts.atoms, some.ridingFrom, eveningOf(count.on)).hours + some.rest;
    return some;
}

Count countOf(const TaskFacts& facts, const TaskVersion& version, const Record* last, Date on) {
    Count count;
    count.from = last == nullptr ? facts.since : last->date;
    count.since = facts.since;
    count.on = on;
    count.countFrom = version.countFrom;
    count.side = isSafety(version.consequence) ? From::High : From::Best;
    if (last != nullptr && !wasNeverDone(*last))
        count.after = momentOf(*last);
    count.behind = usage::exposure(facts.atoms, count.after, eveningOf(on));
    Uncounted some{count.after, {}};
    if (count.after && version.countFrom == CountFrom::FixedMarks)
        count.before = usage::exposure(facts.atoms, std::nullopt, *count.after);
    if (last != nullptr) {
        const auto later = atomsAfter(facts.atoms, count.after);
        const auto past = std::find_if(later.begin(), later.end(),
                                       [](const Atom& atom) { return atom.kind == usage::AtomKind::Past; });
        count.countsOpen = past != later.end() || (count.after && count.after < facts.notedFrom);
        some = countHours(count, facts, *last, past);
        takeStated(count, facts, version, *last);
    }
    if (version.weights.empty())
        return count;
    count.raw = count.behind.hours;
    count.behind.hours = weighted(facts, version, some.ridingFrom, eveningOf(on), some.rest);
    if (count.after && version.countFrom == CountFrom::FixedMarks && some.ridingFrom == count.after)
        count.before.hours = weighted(facts, version, std::nullopt, *count.after, {});
    return count;
}

// Of an odometer that nobody read, some of it before the file, no limit speaks.
bool isLeftOut(const Limit& limit, const TaskVersion& version, const TaskFacts& facts, const Count& count) {
    if (limit.counter != Counter::Metres || !count.countsOpen || version.limits.size() < 2)
        return false;
    return std::none_of(facts.atoms.begin(), facts.atoms.end(),
                        [](const Atom& atom) { return atom.distance.best > units::Metres{0}; });
}

void combine(Countdown& down, const TaskVersion& version) {
    if (down.limits.empty())
        return;
    const bool first = version.combine == Combine::First;
    const auto least = [&](auto&& of) {
        const auto less = [&](const LimitState& a, const LimitState& b) { return of(a) < of(b); };
        return first ? std::max_element(down.limits.begin(), down.limits.end(), less)
                     : std::min_element(down.limits.begin(), down.limits.end(), less);
    };
    const auto governing =
        least([](const LimitState& limit) { return std::pair(limit.reached, limit.used); });
    down.governing = static_cast<std::size_t>(governing - down.limits.begin());
    down.used = governing->used;
    down.reached = governing->reached;
    down.beyond = least([](const LimitState& limit) { return limit.beyond; })->beyond;
    down.over = down.reached == Reached::Yes;
    down.withinAllowance = down.over && down.beyond != Reached::Yes;
}

bool happened(const Atom& atom, Happening happening) {
    switch (happening) {
        case Happening::Wash:
            return atom.washes > 0;
        case Happening::PressureWash:
            return atom.pressureWashes > 0;
        case Happening::MudDay:
            return atom.mud > 0;
        case Happening::Crash:
            return atom.crashes > 0;
        case Happening::BeforeRace:
        case Happening::Job:
            break;  // a race ahead and another job are no use
    }
    return false;
}

// Completions of another task since `last`, in any order. What was noted for the same part of the same day
// was done with it. Where nothing is known of the task itself, what is known of the other from before the
// file proves nothing: this one may have been done with it.
std::vector<const Record*> othersSince(const TaskFacts& facts, std::string_view code, const Record* last,
                                       Date on) {
    std::vector<const Record*> since;
    for (const Record* other : facts.others)
        if (other->code == code && other->date <= on &&
            (last != nullptr ? momentOf(*last) < momentOf(*other)
                             : facts.startedNew || other->kind != RecordKind::Baseline))
            since.push_back(other);
    return since;
}

// Those of them that triggered it: of one part of a day only what was told later than `last` came after it.
std::vector<const Record*> othersAfter(const TaskFacts& facts, std::string_view code, const Record* last,
                                       Date on) {
    if (last == nullptr)
        return othersSince(facts, code, last, on);
    std::vector<const Record*> after;
    for (const Record* other : facts.others)
        if (other->code == code && other->date <= on && cameAfter(*other, *last))
            after.push_back(other);
    return after;
}

void trigger(Countdown& down, const TaskVersion& version, const TaskFacts& facts, const Record* last, Date on,
             bool wasRidden) {
    const auto note = [&down](Happening happening, Date date, std::optional<RecordId> by = std::nullopt) {
        if (down.triggeredOn && *down.triggeredOn <= date)
            return;
        down.triggeredBy = by;
        down.triggered = happening;
        down.triggeredOn = date;
    };
    const auto later =
        atomsAfter(facts.atoms, last == nullptr ? std::nullopt : std::optional(momentOf(*last)));
    for (const Trigger& trigger : version.triggers) {
        if (trigger.happening == Happening::Job)
            for (const Record* other : othersAfter(facts, trigger.code, last, on))
                note(Happening::Job, other->date, other->id);
        for (const Atom& atom : later) {
            if (atom.to > eveningOf(on))
                break;
            if (happened(atom, trigger.happening)) {
                note(trigger.happening, atom.to.date);
                break;
            }
        }
        if (trigger.happening == Happening::BeforeRace)
            down.beforeNextRace = last == nullptr || wasRidden;
    }
    down.over = down.over || down.triggered.has_value();
}

}  // namespace

bool isCompletion(const Record& record, std::span<const TaskVersion* const> versions, Date on) {
    if (record.kind != RecordKind::LookedFine)
        return true;
    // A record stays under the version that it followed.
    const TaskVersion* version = nullptr;
    for (const TaskVersion* each : versions)
        if (record.version == each->id)
            version = each;
    if (version == nullptr)
        version = calendar::inForce(versions, record.date);
    if (version == nullptr)
        version = calendar::inForce(versions, on);
    return version != nullptr && isALook(*version);
}

Countdown countdown(const TaskFacts& facts, Date on) {
    Countdown down;
    const TaskVersion* version = calendar::inForce(facts.versions, on);
    if (version == nullptr) {
        down.noRecord = true;
        return down;
    }
    if (facts.nothingFitted) {
        down.nothingFitted = true;
        return down;
    }
    auto completions = completionsOf(facts, on);
    const Record* last = completions.empty() ? nullptr : completions.back();
    // A figure at its limit is not talked away: who looked and found it fine measured nothing.
    const auto lastDone = std::find_if(completions.rbegin(), completions.rend(), [](const Record* record) {
        return record->kind != RecordKind::LookedFine;
    });
    const Record* done = lastDone == completions.rend() ? nullptr : *lastDone;
    std::erase_if(completions, [](const Record* record) { return wasNeverDone(*record); });
    down.completions = static_cast<std::int64_t>(completions.size());
    if (last != nullptr) {
        down.origin = last->kind == RecordKind::Baseline ? Origin::Baseline : Origin::Record;
        down.last = last->id;
    } else {
        down.origin = facts.startedNew ? Origin::KnownStart : Origin::Nothing;
    }
    down.noRecord = down.origin == Origin::Nothing;

    const auto withExtra = std::find_if(completions.rbegin(), completions.rend(),
                                        [](const Record* record) { return record->extraDone; });
    if (version->everyNth > 0)
        down.extraIn = std::max<std::int64_t>(version->everyNth - (withExtra - completions.rbegin()), 1);

    bool wasRidden = false;
    if (!down.noRecord) {
        const Count count = countOf(facts, *version, last, on);
        for (const Limit& limit : version->limits)
            if (limit.every > 0 && !isLeftOut(limit, *version, facts, count))
                down.limits.push_back(limitState(limit, count));
        wasRidden = count.behind.outings > 0 || count.behind.hours.high != Hours{0};
    }
    combine(down, *version);
    if (version->nth > 0) {
        down.othersDone = static_cast<std::int64_t>(othersSince(facts, version->nthOf, last, on).size());
        down.used = static_cast<double>(down.othersDone) / static_cast<double>(version->nth);
        down.over = down.othersDone >= version->nth;
    }
    trigger(down, *version, facts, last, on, wasRidden);
    down.value = reachedValue(facts.values, done, on);
    down.over = down.over || down.value.has_value();
    return down;
}

const Deferral* deferralInForce(std::span<const Deferral* const> deferrals, Date on, Hours machineBest,
                                std::optional<Date> lastDone) {
    const Deferral* newest = nullptr;
    for (const Deferral* deferral : deferrals)
        if (deferral->date <= on && (newest == nullptr || std::tie(newest->date, newest->entered) <=
                                                              std::tie(deferral->date, deferral->entered)))
            newest = deferral;
    if (newest == nullptr || (!newest->untilDate && !newest->untilHours))
        return nullptr;
    const bool dayHasCome = newest->untilDate && on >= *newest->untilDate;
    const bool hoursReached = newest->untilHours && machineBest >= *newest->untilHours;
    const bool doneSince = lastDone && *lastDone >= newest->date;
    return dayHasCome || hoursReached || doneSince ? nullptr : newest;
}

}  // namespace wm::upkeep
