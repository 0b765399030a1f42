// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/verbs/verb.h"

namespace wm::verbs {

// Jobs done, snags, what is put off, and what follows.

/// What the job was on goes away with it: where to, and until when.
struct Sending {
    std::string where{};
    std::optional<calendar::Date> backOn{};
};

struct JobDraft {
    upkeep::Record record{};  ///< machine, task or snag, date, uses, measured ...; the verb fills item,
                              ///< version, code and the stated total time. A given item stays only where
                              ///< the task's position held none
    std::vector<JointId>
        confirmed{};          ///< joints tightened and checked; the others that were opened become hand-tight
    bool opensJoints = true;  ///< false: nothing was taken apart (looked fine, baseline)
    std::vector<std::pair<std::int64_t, std::string>>
        answers{};                          ///< follow-ups that this job settles: origin, words
    std::optional<ToolId> tool{};           ///< what the confirmed joints were tightened with
    std::vector<stock::StockMove> drawn{};  ///< which containers the same amounts came from before
    bool notesMeter = false;  ///< the meter is a reading though newer ones stand: it was one before
    std::optional<Sending> sends{};
    bool confirmsOthers = false;  ///< joints that the job never touches were tightened too, and that is meant
};
/// The draft that would say the record again, with all that came with it; nothing if there is no such record.
std::optional<JobDraft> draftOf(const picture::Ledger& ledger, RecordId id);
/// Writes the record, takes what was used from the shelf, opens and closes joints, ends the snag, notes the
/// meter if it is newer than the last reading, and takes the job out of the weekend. A Baseline may be dated
/// before the machine was known; it takes nothing from the shelf and opens nothing.
/// With `sends` the item in the task's position is at a workshop afterwards (NotFitted "sends" if none is
/// tracked there). A job that is there already and says nothing more than that joints were torqued adds that
/// to it. Errors: those of usage::checkReading in "meter", NotPositive (a use), WrongUnit (a measurement),
/// NothingToDo (the snag has ended), Duplicate (the same job on the same day at the same meter), NotOpened
/// "torqued" (a joint that the job never touches, unless confirmsOthers).
base::Result<picture::Change> recordJob(const VerbContext& context, JobDraft draft);
base::Result<picture::Change> addSnag(const VerbContext& context, upkeep::Snag snag);
base::Result<picture::Change> endSnag(const VerbContext& context, upkeep::SnagEnd end);
/// It must have an end (Empty "until_date"), after today. ReasonNeeded for a safety task or snag without one;
/// while a safety deferral still runs, another one needs other words (ReasonNeeded, `given` the old ones).
base::Result<picture::Change> defer(const VerbContext& context, upkeep::Deferral deferral);
base::Result<picture::Change> answerFollowUp(const VerbContext& context, upkeep::FollowUpAnswer answer);

}  // namespace wm::verbs
