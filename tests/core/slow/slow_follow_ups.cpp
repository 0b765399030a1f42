// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "tests/core/slow/concerns.h"
#include "tests/core/slow/subject.h"

namespace wm::tale {

using calendar::Date;
using calendar::DayPart;
using calendar::Moment;
using slow::Cut;
using upkeep::FollowUpRule;
using upkeep::Record;
using upkeep::TaskVersion;

namespace {

/// One rule that one record brought.
struct Brought {
    const Record* record = nullptr;
    const TaskVersion* job = nullptr;
    const FollowUpRule* rule = nullptr;
};

/// Whose it is. Of a machine's own, `tied` is the position that the job was about.
struct Owner {
    Subject subject{};
    std::string tied{};
};

const TaskVersion* taskOn(const picture::Ledger& ledger, MachineId machine, const std::string& code) {
    for (const TaskVersion& version : ledger.all<TaskVersion>())
        if (version.machine == machine && version.code == code && !code.empty())
            return &version;
    return nullptr;
}

std::optional<ItemId> itemAt(const PlacesThen& places, MachineId machine, const std::string& path,
                             Moment then) {
    for (const items::Item& item : places.ledger().all<items::Item>()) {
        const auto root = places.rootOf(item.id, then);
        if (root && root->machine == machine && root->path == path)
            return item.id;
    }
    return std::nullopt;
}

// From the item that the job was on to the one at `path`: the whole that it was in, or a part of it.
std::optional<ItemId> fromJobTo(const PlacesThen& places, ItemId item, const std::string& jobPath,
                                const std::string& path, Moment then) {
    auto from = partsOf(jobPath);
    auto to = partsOf(path);
    std::optional<ItemId> at = item;
    for (; from.size() > to.size() && at; from.pop_back()) {
        const auto spot = places.spotOf(*at, then);
        at = spot ? spot->parent : std::nullopt;
    }
    for (auto next = from.size(); next < to.size() && at; ++next)
        at = places.sitsAt({std::nullopt, at, to[next]}, then);
    to.resize(std::min(to.size(), from.size()));
    return to == from ? at : std::nullopt;
}

Owner ownerOf(const PlacesThen& places, const Brought& brought) {
    const Record& record = *brought.record;
    const Moment then = whenDone(record);
    const std::string& jobPath = brought.job->position;
    Owner owner;
    owner.subject.machine = record.machine;
    if (brought.rule->code.empty()) {
        owner.subject.item =
            record.item || jobPath.empty() ? record.item : itemAt(places, record.machine, jobPath, then);
        return owner;
    }
    const TaskVersion* named = taskOn(places.ledger(), record.machine, brought.rule->code);
    if (named == nullptr || named->position.empty()) {
        if (!jobPath.empty() && (record.item || itemAt(places, record.machine, jobPath, then)))
            owner.tied = jobPath;
        return owner;
    }
    if (record.item && !jobPath.empty())
        owner.subject.item = fromJobTo(places, *record.item, jobPath, named->position, then);
    if (!owner.subject.item)
        owner.subject.item = itemAt(places, record.machine, named->position, then);
    return owner;
}

/// From when on it stands. What brought it is a job, which has its place among what was told of that part of
/// the day; or a refit, which has none: the use of that part went before it, a check of that part is one of
/// it.
struct Since {
    Moment at{};
    std::optional<base::Entered> told{};

    [[nodiscard]] Cut use() const { return told ? Cut{at, *told} : Cut{at}; }
    [[nodiscard]] Cut check() const { return {at, told.value_or(0)}; }
};

// The points of time after which something may have come due: in each part of a day, first what nobody noted,
// then each outing as it was told.
std::vector<Cut> pointsOf(const PlacesThen& places, Date from, Date upTo) {
    std::vector<Cut> points;
    for (Date day = from; day <= upTo; day = day.plusDays(1))
        for (const DayPart part : {DayPart::BeforeRiding, DayPart::Riding, DayPart::AfterRiding})
            points.emplace_back(Moment{day, part}, 0);
    for (const auto& outing : places.ledger().all<usage::Outing>())
        points.emplace_back(Moment{outing.date, DayPart::Riding}, outing.entered);
    std::sort(points.begin(), points.end());
    return points;
}

// When it came due, walked through the days after `since`; nothing if it did not up to `now`.
std::optional<Cut> dueAt(const PlacesThen& places, const Subject& subject, const FollowUpRule& rule,
                         const Since& since, Moment now) {
    if (rule.when == upkeep::When::AtOnce)
        return since.check();
    for (const Cut& at : pointsOf(places, since.at.date, now.date)) {
        if (at <= since.use() || Cut{now} < at)
            continue;
        if (rule.when == upkeep::When::AfterDays) {
            if (at.at.date - since.at.date >= rule.amount)
                return at;
            continue;
        }
        const auto tally = ran(places, subject, since.use(), at);
        const bool wasOut = tally.outings > 0 || tally.best > 0;
        if (wasOut && (rule.when == upkeep::When::NextOuting || tally.best >= rule.amount))
            return at;
    }
    return std::nullopt;
}

bool wasAnswered(const PlacesThen& places, const Brought& brought, Date from, Date upTo) {
    for (const auto& answer : places.ledger().all<upkeep::FollowUpAnswer>())
        if (answer.origin == brought.record->id.value() && answer.what == brought.rule->what &&
            from <= answer.date && answer.date <= upTo)
            return true;
    return false;
}

// A check settles what was due when it was made: that was told before it, or in an earlier part of the day.
// Of a baseline nobody knows its place in its part of the day.
bool settles(const Record& check, const Cut& due) {
    return check.kind == upkeep::RecordKind::Baseline ? due.at <= whenDone(check)
                                                      : due < Cut{whenDone(check), check.entered};
}

bool wasSettled(const PlacesThen& places, const Brought& brought, const Subject& subject, const Since& since,
                Moment upTo) {
    if (wasAnswered(places, brought, since.at.date, upTo.date))
        return true;
    const auto due = dueAt(places, subject, *brought.rule, since, upTo);
    if (!due || brought.rule->code.empty())
        return false;
    for (const Record& record : places.ledger().all<Record>())
        if (record.code == brought.rule->code && record.id != brought.record->id && settles(record, *due) &&
            whenDone(record) <= upTo && concerns(places, record, subject, false))
            return true;
    return false;
}

// The moments after `since` at which something was fitted on the way to a path of a machine, in order.
std::vector<Moment> refits(const PlacesThen& places, MachineId machine, const std::string& path, Moment since,
                           Moment upTo) {
    std::vector<Moment> found;
    for (const items::Move& move : places.ledger().all<items::Move>()) {
        const Moment at{move.date, move.part};
        if (move.kind != items::MoveKind::Fitted || at <= since || upTo < at)
            continue;
        const auto root = places.rootOf(move.item, at);
        if (root && root->machine == machine && (path + "/").starts_with(root->path + "/"))
            found.push_back(at);
    }
    std::sort(found.begin(), found.end());
    return found;
}

// Was the job on something that lay beside the machine then?
bool wasOnASpare(const PlacesThen& places, const Brought& brought) {
    if (!brought.record->item)
        return false;
    const auto root = places.rootOf(*brought.record->item, whenDone(*brought.record));
    return !root || root->machine != brought.record->machine;
}

bool sitsThere(const PlacesThen& places, const Brought& brought, const std::string& path, Moment then) {
    const auto root = places.rootOf(*brought.record->item, then);
    return root && root->machine == brought.record->machine && root->path == path;
}

// A machine's own check begins anew with each refit, while nobody had settled it; it ends where the position
// is empty. Of a job on a spare it begins when that one is fitted.
std::optional<Since> standsSince(const PlacesThen& places, const Brought& brought, const Owner& owner,
                                 Moment now) {
    Since since{whenDone(*brought.record), brought.record->entered};
    const MachineId machine = owner.subject.machine;
    if (!owner.tied.empty()) {
        bool hasBegun = !wasOnASpare(places, brought);
        for (const Moment refit : refits(places, machine, owner.tied, since.at, now)) {
            if (!hasBegun && !sitsThere(places, brought, owner.tied, refit))
                continue;
            if (hasBegun && wasSettled(places, brought, owner.subject, since, refit))
                return std::nullopt;
            hasBegun = true;
            since = {refit, std::nullopt};
        }
        if (!hasBegun || places.holds(machine, owner.tied, now).isEmpty)
            return std::nullopt;
    }
    return wasSettled(places, brought, owner.subject, since, now) ? std::nullopt : std::optional(since);
}

bool isShownOn(const PlacesThen& places, const Owner& owner, MachineId machine, Moment now) {
    if (!owner.subject.item)
        return owner.subject.machine == machine;
    const auto root = places.rootOf(*owner.subject.item, now);
    return root && root->machine == machine;
}

// A job on a spare that nobody has fitted since asks the machine nothing yet.
bool hasBegun(const PlacesThen& places, const Brought& brought, const Owner& owner, Moment now) {
    if (owner.tied.empty() || !wasOnASpare(places, brought))
        return true;
    const auto moments = refits(places, owner.subject.machine, owner.tied, whenDone(*brought.record), now);
    return std::any_of(moments.begin(), moments.end(),
                       [&](Moment refit) { return sitsThere(places, brought, owner.tied, refit); });
}

bool isLaterOfTheSame(const PlacesThen& places, const Brought& one, const Owner& ownerOne,
                      const Brought& other, Moment now) {
    if (one.job->name != other.job->name || one.rule->what != other.rule->what ||
        one.rule->code != other.rule->code || one.record == other.record)
        return false;
    const Owner owner = ownerOf(places, other);
    const bool isSame = owner.subject.item == ownerOne.subject.item &&
                        (owner.subject.item || owner.subject.machine == ownerOne.subject.machine);
    const Moment a = whenDone(*one.record);
    const Moment b = whenDone(*other.record);
    return isSame && hasBegun(places, other, owner, now) &&
           (a < b || (a == b && one.record->entered < other.record->entered));
}

}  // namespace

std::vector<Demand> slowFollowUps(const Tale& tale, const std::string& machine, Date on) {
    const PlacesThen places(tale.asTold);
    const Moment now{on, DayPart::AfterRiding};
    std::vector<Brought> all;
    for (const Record& record : tale.asTold.all<Record>())
        if (record.kind == upkeep::RecordKind::Done && record.date <= on)
            for (const FollowUpRule& rule : versionOf(places, record).followUps)
                all.push_back({&record, &versionOf(places, record), &rule});
    std::vector<Demand> demands;
    for (const Brought& brought : all) {
        const Owner owner = ownerOf(places, brought);
        if (!isShownOn(places, owner, tale.machine(machine), now) ||
            std::any_of(all.begin(), all.end(), [&](const Brought& other) {
                return isLaterOfTheSame(places, brought, owner, other, now);
            }))
            continue;
        const auto since = standsSince(places, brought, owner, now);
        if (!since)
            continue;
        const auto due = dueAt(places, owner.subject, *brought.rule, *since, now);
        demands.push_back({brought.rule->what, tale.nameOf(brought.record->id.value()), since->at.date.iso(),
                           due.has_value()});
    }
    return demands;
}

}  // namespace wm::tale
