// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/book/unrecorded.h"

#include <algorithm>

#include "core/upkeep/unknown.h"

namespace wm::book {

namespace {

// A machine of model year 2019 can have been sold from the summer before.
calendar::Date oldestSince(const items::Machine& machine) {
    if (machine.startedNew || !machine.year)
        return machine.since;
    const auto sold = calendar::makeDate(static_cast<int>(*machine.year) - 1, 7, 1);
    return sold ? std::min(*sold, machine.since) : machine.since;
}

// Of what sits in the task's position: it may be as old as the machine (one that came new has a known start,
// and is asked about by nobody), and is at least as old as it is known.
calendar::Date oldestSince(const Book& book, const DueLine& line, const items::Machine& machine) {
    const auto* item = line.item ? book.ledger().find<items::Item>(*line.item) : nullptr;
    return item != nullptr ? std::min(item->since, oldestSince(machine)) : oldestSince(machine);
}

}  // namespace

std::vector<const DueLine*> unknownOf(const Book& book, MachineId machine) {
    const auto* card = book.ledger().find<items::Machine>(machine);
    if (card == nullptr)
        return {};
    std::vector<const DueLine*> lines;
    std::vector<upkeep::Unknown> unknowns;
    for (const DueLine& line : book.due(machine)) {
        if (!line.countdown.noRecord)
            continue;
        lines.push_back(&line);
        unknowns.push_back({line.task, line.item ? book.life(*line.item) : book.life(machine),
                            oldestSince(book, line, *card)});
    }
    std::vector<const DueLine*> ranked;
    for (const std::size_t at : upkeep::rankUnknown(unknowns, book.today()))
        ranked.push_back(lines[at]);
    std::stable_partition(ranked.begin(), ranked.end(),
                          [](const DueLine* line) { return !outlook::isOfTheRound(*line->task); });
    return ranked;
}

}  // namespace wm::book
