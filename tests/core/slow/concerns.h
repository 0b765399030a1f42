// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tests/core/slow/places_then.h"

// Which records are whose, for the slow subject.
namespace wm::tale {

/// What a clock is asked of: an item, or without one the machine; `path` is the task's position.
struct Subject {
    MachineId machine{};
    std::optional<ItemId> item{};
    std::string path{};
    bool isEmpty = false;
};

calendar::Moment whenDone(const upkeep::Record& record);
/// What was told of its moment before it lies before it. A baseline has no place among the others of its
/// moment.
slow::Cut cutAfter(const upkeep::Record& record);
/// Later in time, or told later of the same part of a day; a baseline was done with what was told of its
/// part.
bool isDoneAfter(const upkeep::Record& later, const upkeep::Record& earlier);
/// The version that a record followed; every record of a tale has one.
const upkeep::TaskVersion& versionOf(const PlacesThen& places, const upkeep::Record& record);
/// Told of something done: a look only where looking is the job.
bool isCompletion(const PlacesThen& places, const upkeep::Record& record);
/// Is it about this item: by its name, by a part or a whole of that time, or by the machine that carried it?
bool concernsItem(const PlacesThen& places, const upkeep::Record& record, ItemId item);
bool concerns(const PlacesThen& places, const upkeep::Record& record, const Subject& subject, bool isOwnJob);

/// Records of one job up to a day that concern a subject, in order of time, then of telling.
std::vector<const upkeep::Record*> recordsOf(const PlacesThen& places, const std::string& code,
                                             const Subject& subject, bool isOwnJob, calendar::Date on);

/// What an item, or without one the machine, ran after one moment and up to another; the machine's use of
/// the time before an item was tracked too, where it was there then. Stated pasts left out.
slow::Tally ran(const PlacesThen& places, const Subject& subject, slow::Cut after, slow::Cut upTo);

}  // namespace wm::tale
