// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/verbs/job_parts.h"

#include <algorithm>

#include "core/picture/checks.h"

namespace wm::verbs {

using book::Book;
using picture::Entry;
using picture::Ledger;

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

}  // namespace wm::verbs
