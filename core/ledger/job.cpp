// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/ledger/job.h"

#include <algorithm>

#include "core/ledger/checks.h"

namespace wm::ledger {

bool bringsFollowUps(const Ledger& ledger, MachineId machine, std::int64_t origin) {
    if (ledger.strikeOf(origin) != nullptr)
        return false;
    const auto* record = ledger.find<upkeep::Record>(RecordId{origin});
    const auto* crash = ledger.find<usage::Crash>(CrashId{origin});
    // A tool that was found out of tolerance asks for re-checks on every machine that it was used on.
    const auto* calibration = ledger.find<fastening::Calibration>(CalibrationId{origin});
    return (record != nullptr && record->machine == machine) ||
           (calibration != nullptr && !calibration->foundWithin) ||
           (crash != nullptr && crash->machine == machine);
}

bool isAnswered(const Ledger& ledger, std::int64_t origin, std::string_view what) {
    const auto& answers = ledger.all<upkeep::FollowUpAnswer>();
    return std::any_of(answers.begin(), answers.end(), [&](const upkeep::FollowUpAnswer& answer) {
        return answer.origin == origin && answer.what == what;
    });
}

usage::HourReading placed(const Ledger& ledger, usage::HourReading reading) {
    const usage::UseFacts facts = readingsOf(ledger, reading.machine);
    if (reading.part != calendar::DayPart::AfterRiding || usage::checkReading(facts, reading))
        return reading;
    usage::HourReading between = reading;
    between.part = calendar::DayPart::Riding;
    return usage::checkReading(facts, between) ? between : reading;
}

void unpick(Entry& entry, const Ledger& ledger, std::optional<TaskId> task, std::optional<SnagId> snag) {
    for (weekend::Pick pick : ledger.all<weekend::Pick>()) {
        const bool same = (task && pick.task == task) || (snag && pick.snag == snag);
        if (!same || !pick.picked)
            continue;
        pick.picked = false;
        entry.put(pick);
    }
}

void openLot(Entry& entry, const Book& book, LotId lot, calendar::Date date) {
    const auto* card = book.ledger().find<stock::Lot>(lot);
    const auto* line = card == nullptr ? nullptr : book.ledger().find<stock::StockLine>(card->line);
    const auto* there = line == nullptr ? nullptr : book.onHand(line->id);
    if (there == nullptr || card->opened || line->unit == stock::Unit::Piece || date < card->received)
        return;
    const bool single = std::any_of(there->lots.begin(), there->lots.end(), [&](const auto& part) {
        return part.lot == lot && part.amount > 0 && part.amount <= line->packAmount;
    });
    if (!single)
        return;
    stock::Lot opened = *card;
    opened.opened = date;
    entry.put(std::move(opened));
}

}  // namespace wm::ledger
