// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/book/expiry.h"

#include <algorithm>

namespace wm::book {

using calendar::DayPart;
using calendar::Moment;
using outlook::StandingKind;

namespace {

bool endsALife(const upkeep::TaskVersion& task) {
    return task.renews || std::any_of(task.limits.begin(), task.limits.end(),
                                      [](const upkeep::Limit& limit) { return limit.hard; });
}

// Is it the item itself, or does it sit in it?
bool isOrIsIn(const Book& book, ItemId part, ItemId whole, Moment when) {
    std::optional<ItemId> at = part;
    while (at && *at != whole) {
        const auto place = book.fittings().placeOf(*at, when);
        at = place ? place->parent : std::nullopt;
    }
    return at.has_value();
}

// Past its limit, whatever a happening asks for beside.
bool isPastItsLimit(const DueLine& line) {
    const auto& limits = line.countdown.limits;
    return std::any_of(limits.begin(), limits.end(), [](const auto& limit) { return limit.left <= 0; }) &&
           line.countdown.over;
}

}  // namespace

std::vector<Expiry> expiriesOf(const Book& book, ItemId item) {
    std::vector<Expiry> found;
    const Moment now{book.today(), DayPart::AfterRiding};
    const auto spells = book.fittings().machineSpells(item);
    if (spells.empty() || (spells.back().to && *spells.back().to <= now))
        return found;
    for (const DueLine& line : book.due(spells.back().machine)) {
        if (!line.item || !endsALife(*line.task) || !isOrIsIn(book, *line.item, item, now))
            continue;
        const bool isOver = isPastItsLimit(line);
        const auto& standing = line.standing;
        if (!isOver && (standing.kind != StandingKind::BeforeEvent || !standing.event))
            continue;
        const auto* card = book.ledger().find<items::Item>(*line.item);
        found.push_back({card == nullptr ? std::string{} : card->name, line.task->name, isOver,
                         standing.likely, standing.event});
    }
    return found;
}

}  // namespace wm::book
