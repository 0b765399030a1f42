// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/book_answer.h"

#include <memory>

#include "core/book/book.h"

namespace wm::tale {

namespace {

book::Book bookOf(const Tale& tale, calendar::Date on) {
    return {std::make_shared<const picture::Ledger>(tale.ledger), on};
}

std::string originOf(const Tale& tale, const upkeep::Countdown& down) {
    switch (down.origin) {
        case upkeep::Origin::Record:
        case upkeep::Origin::Baseline:
            return tale.nameOf(down.last->value());
        case upkeep::Origin::KnownStart:
            return "new";
        case upkeep::Origin::Nothing:
            break;
    }
    return "nothing";
}

}  // namespace

Answer bookAnswer(const Tale& tale, const std::string& machine, const std::string& task, calendar::Date on) {
    const book::Book book = bookOf(tale, on);
    const book::DueLine& line = *book.dueLine(tale.tasks.at(machine + "/" + task));
    const upkeep::Countdown& down = line.countdown;
    Answer answer;
    answer.subject = line.item ? "item " + tale.nameOf(line.item->value()) : "machine " + machine;
    answer.countsFrom = originOf(tale, down);
    if (!down.limits.empty()) {
        const auto& limit = down.limits.front();
        answer.inHours = limit.limit.counter == upkeep::Counter::Hours;
        answer.behind = Behind{limit.behind.low, limit.behind.best, limit.behind.high};
    }
    answer.completions = down.completions;
    answer.others = down.othersDone;
    answer.extra = down.extraDue;
    if (down.triggered)
        answer.triggered = down.triggeredOn->iso();
    answer.due = down.over;
    return answer;
}

std::vector<Demand> bookFollowUps(const Tale& tale, const std::string& machine, calendar::Date on) {
    const book::Book book = bookOf(tale, on);
    std::vector<Demand> demands;
    for (const auto& open : book.followUps(tale.machine(machine)))
        demands.push_back({open.rule.what, tale.nameOf(open.origin), open.since.iso(), open.due});
    return demands;
}

}  // namespace wm::tale
