// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/concerns.h"

#include <algorithm>

namespace wm::tale {

using calendar::Moment;
using upkeep::Record;

namespace {

// One path lies on the way to the other.
bool areOnOneWay(const std::string& one, const std::string& other) {
    const auto a = partsOf(one);
    const auto b = partsOf(other);
    const auto shorter = std::min(a.size(), b.size());
    return std::equal(a.begin(), a.begin() + static_cast<std::ptrdiff_t>(shorter), b.begin());
}

slow::Tally sum(slow::Tally a, const slow::Tally& b) {
    a.low += b.low;
    a.best += b.best;
    a.high = a.high && b.high ? std::optional(*a.high + *b.high) : std::nullopt;
    a.outings += b.outings;
    a.starts += b.starts;
    a.washes += b.washes;
    a.mudDays += b.mudDays;
    a.crashes += b.crashes;
    return a;
}

}  // namespace

Moment whenDone(const Record& record) {
    return {record.date, record.part};
}

slow::Cut cutAfter(const Record& record) {
    return record.kind == upkeep::RecordKind::Baseline ? slow::Cut{whenDone(record)}
                                                       : slow::Cut{whenDone(record), record.entered};
}

bool isDoneAfter(const Record& later, const Record& earlier) {
    if (later.kind == upkeep::RecordKind::Baseline || earlier.kind == upkeep::RecordKind::Baseline)
        return whenDone(earlier) < whenDone(later);
    return cutAfter(earlier) < cutAfter(later);
}

const upkeep::TaskVersion& versionOf(const PlacesThen& places, const Record& record) {
    return *places.ledger().find<upkeep::TaskVersion>(*record.version);
}

bool isCompletion(const PlacesThen& places, const Record& record) {
    const auto& version = versionOf(places, record);
    return record.kind != upkeep::RecordKind::LookedFine || (!version.renews && version.kit.empty());
}

bool concernsItem(const PlacesThen& places, const Record& record, ItemId item) {
    const Moment then = whenDone(record);
    if (record.item)
        return places.areRelated(*record.item, item, then);
    const auto root = places.rootOf(item, then);
    const std::string& of = versionOf(places, record).position;
    return root && root->machine == record.machine && (of.empty() || areOnOneWay(root->path, of));
}

bool concerns(const PlacesThen& places, const Record& record, const Subject& subject, bool isOwnJob) {
    if (subject.isEmpty)
        return false;
    if (subject.item)
        return concernsItem(places, record, *subject.item);
    return record.machine == subject.machine && (!isOwnJob || subject.path.empty() || !record.item);
}

std::vector<const Record*> recordsOf(const PlacesThen& places, const std::string& code,
                                     const Subject& subject, bool isOwnJob, calendar::Date on) {
    std::vector<const Record*> found;
    for (const Record& record : places.ledger().all<Record>())
        if (record.code == code && record.date <= on && isCompletion(places, record) &&
            concerns(places, record, subject, isOwnJob))
            found.push_back(&record);
    std::sort(found.begin(), found.end(), [](const Record* a, const Record* b) {
        return whenDone(*a) < whenDone(*b) || (whenDone(*a) == whenDone(*b) && a->entered < b->entered);
    });
    return found;
}

slow::Tally ran(const PlacesThen& places, const Subject& subject, slow::Cut after, slow::Cut upTo) {
    const auto garage = slowGarage(places.ledger(), places.firstDay(), upTo.at.date);
    if (!subject.item)
        return slow::ofMachine(garage, subject.machine, after, upTo);
    const auto told = slow::ofItem(garage, *subject.item, after, upTo);
    const items::Move* first = places.firstMoveOf(*subject.item);
    if (first == nullptr || !places.wasThereBefore(*subject.item))
        return told;
    const Moment came{first->date, first->part};
    if (came < after.at)
        return told;
    const Subject host{first->machine.value_or(subject.machine), first->parent, {}, false};
    return sum(ran(places, host, after, std::min(slow::Cut{came}, upTo)), told);
}

}  // namespace wm::tale
