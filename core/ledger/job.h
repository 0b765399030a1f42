// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

#include "core/ledger/book.h"
#include "core/ledger/entry.h"

namespace wm::ledger {

// What several verbs about work at the bench have in common.

/// A job that was checked and filled in; the pointers are into the book's ledger.
struct ReadyJob {
    JobDraft draft{};
    const items::Machine* machine = nullptr;
    const upkeep::TaskVersion* task = nullptr;
    const upkeep::Snag* snag = nullptr;
};
/// Everything that recordJob says before it writes, with its errors.
base::Result<ReadyJob> checkJob(const Pen& pen, JobDraft draft);
/// The record and all that it brings.
void addJob(Entry& entry, const Book& book, const ReadyJob& job);
/// True for a Baseline of a day before the file knew the machine: nothing was metered then.
bool isBeforeTheFile(const upkeep::Record& record, const items::Machine& machine);

/// True if `origin` is a record or crash of this machine that counts, or a failed calibration: something that
/// brings follow-ups.
bool bringsFollowUps(const Ledger& ledger, MachineId machine, std::int64_t origin);
/// True if this follow-up already has an answer that counts.
bool isAnswered(const Ledger& ledger, std::int64_t origin, std::string_view what);
/// The place of a meter figure that came with something done that day: in the evening, or between the day's
/// riding if only a reading of the same evening stands against it (two outings, the first one noted late or
/// corrected).
usage::HourReading placed(const Ledger& ledger, usage::HourReading reading);
/// Takes a task or snag out of the weekend, if it was picked.
void unpick(Entry& entry, const Ledger& ledger, std::optional<TaskId> task, std::optional<SnagId> snag);
/// Notes on a single container of a fluid that it was opened, if nobody has yet. A batch of several packs
/// says nothing about which one was opened, so it stays as it is.
void openLot(Entry& entry, const Book& book, LotId lot, calendar::Date date);

}  // namespace wm::ledger
