// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/verbs/upkeep_verbs.h"

// What a record was said with, put together again from the facts that came with it.

namespace wm::verbs {

namespace {

void addMarks(const picture::Ledger& ledger, RecordId id, JobDraft& draft) {
    draft.opensJoints = false;
    for (const auto& mark : ledger.all<fastening::JointMark>()) {
        if (mark.record != id)
            continue;
        draft.opensJoints = true;
        if (mark.kind != fastening::MarkKind::Confirmed)
            continue;
        draft.confirmed.push_back(mark.joint);
        draft.tool = mark.tool;
    }
}

}  // namespace

std::optional<JobDraft> draftOf(const picture::Ledger& ledger, RecordId id) {
    const auto* record = ledger.find<upkeep::Record>(id);
    if (record == nullptr)
        return std::nullopt;
    JobDraft draft;
    draft.record = *record;
    draft.record.id = {};
    draft.record.entered = 0;
    addMarks(ledger, id, draft);
    for (const auto& answer : ledger.all<upkeep::FollowUpAnswer>())
        if (answer.record == id)
            draft.answers.emplace_back(answer.origin, answer.what);
    for (const auto& move : ledger.all<stock::StockMove>())
        if (move.record == id)
            draft.drawn.push_back(move);
    for (const auto& move : ledger.all<items::Move>())
        if (move.record == id)
            draft.sends = Sending{.where = move.note, .backOn = move.backOn};
    const auto& readings = ledger.all<usage::HourReading>();
    draft.confirmsOthers = true;  // what was said stands
    draft.notesMeter = std::any_of(readings.begin(), readings.end(),
                                   [id](const usage::HourReading& reading) { return reading.record == id; });
    return draft;
}

}  // namespace wm::verbs
