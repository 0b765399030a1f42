// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/book/book.h"
#include "core/picture/entry.h"
#include "core/verbs/upkeep_verbs.h"

namespace wm::verbs {

// What several verbs about work at the bench have in common.

/// A job that was checked and filled in; the pointers are into the book's ledger.
struct ReadyJob {
    JobDraft draft{};
    const items::Machine* machine = nullptr;
    const upkeep::TaskVersion* task = nullptr;
    const upkeep::Snag* snag = nullptr;
};
/// Everything that recordJob says before it writes, with its errors.
base::Result<ReadyJob> checkJob(const VerbContext& context, JobDraft draft);
/// The record and all that it brings.
void addJob(picture::Entry& entry, const book::Book& book, const ReadyJob& job);
/// True for a Baseline of a day before the file knew the machine: nothing was metered then.
bool isBeforeTheFile(const upkeep::Record& record, const items::Machine& machine);

/// Takes a task or snag out of the weekend, if it was picked.
void unpick(picture::Entry& entry, const picture::Ledger& ledger, std::optional<TaskId> task,
            std::optional<SnagId> snag);
/// Notes on a single container of a fluid that it was opened, if nobody has yet. A batch of several packs
/// says nothing about which one was opened, so it stays as it is.
void openLot(picture::Entry& entry, const book::Book& book, LotId lot, calendar::Date date);

}  // namespace wm::verbs
