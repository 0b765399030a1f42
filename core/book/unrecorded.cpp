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
calendar::Date leastAge(const Book& book, const DueLine& line, const items::Machine& machine) {
    const auto* item = line.item ? book.ledger().find<items::Item>(*line.item) : nullptr;
    return item != nullptr ? std::min(item->since, oldestSince(machine)) : oldestSince(machine);
}

}  // namespace

bool isUnknown(const DueLine& line) {
    return line.countdown.noRecord || line.countdown.reached == upkeep::Reached::NobodyKnows;
}

std::optional<calendar::Date> oldestSince(const Book& book, const DueLine& line) {
    const auto* card = book.ledger().find<items::Machine>(line.machine);
    if (card == nullptr || (!card->startedNew && !card->year))
        return std::nullopt;
    return leastAge(book, line, *card);
}

std::vector<const DueLine*> unknownOf(const Book& book, MachineId machine) {
    const auto* card = book.ledger().find<items::Machine>(machine);
    if (card == nullptr)
        return {};
    std::vector<const DueLine*> lines;
    std::vector<upkeep::Unknown> unknowns;
    for (const DueLine& line : book.due(machine)) {
        if (!isUnknown(line) || line.empty)
            continue;
        lines.push_back(&line);
        unknowns.push_back(
            {line.task, line.item ? book.life(*line.item) : book.life(machine), leastAge(book, line, *card)});
    }
    std::vector<const DueLine*> ranked;
    for (const std::size_t at : upkeep::rankUnknown(unknowns, book.today()))
        ranked.push_back(lines[at]);
    std::stable_partition(ranked.begin(), ranked.end(),
                          [](const DueLine* line) { return !outlook::isOfTheRound(*line->task); });
    return ranked;
}

std::vector<const DueLine*> narrowableOf(const Book& book, MachineId machine) {
    std::vector<const DueLine*> lines;
    for (const DueLine& line : book.due(machine))
        if (line.standing.kind == outlook::StandingKind::MayBeOver &&
            line.countdown.origin == upkeep::Origin::Baseline)
            lines.push_back(&line);
    return lines;
}

}  // namespace wm::book
