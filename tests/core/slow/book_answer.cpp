// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/book_answer.h"

#include <memory>

#include "core/verbs/upkeep_verbs.h"

namespace wm::tale {

namespace {

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

BookAnswers::BookAnswers(const Tale& tale, calendar::Date on)
    : tale_(tale), book_(std::make_shared<const picture::Ledger>(tale.ledger), on) {}

Answer BookAnswers::answer(const std::string& machine, const std::string& task) const {
    const book::DueLine& line = *book_.dueLine(tale_.tasks.at(machine + "/" + task));
    const upkeep::Countdown& down = line.countdown;
    Answer answer;
    answer.subject = line.empty  ? "empty " + line.task->position + " since " + line.empty->since.date.iso()
                     : line.item ? "item " + tale_.nameOf(line.item->value())
                                 : "machine " + machine;
    answer.countsFrom = down.nothingFitted ? "no clock" : originOf(tale_, down);
    if (!down.limits.empty()) {
        const auto& limit = down.limits.front();
        answer.inHours = limit.limit.counter == upkeep::Counter::Hours;
        answer.behind = Behind{limit.behind.low, limit.behind.best, limit.behind.high};
    }
    answer.completions = down.completions;
    answer.others = down.othersDone;
    answer.extra = down.extraDue();
    if (down.triggered)
        answer.triggered = down.triggeredOn->iso();
    if (down.value)
        answer.reached = down.value->name + " " + down.value->value.text() + " of " +
                         tale_.nameOf(down.value->record.value());
    answer.due = down.over;
    answer.waits = line.waitsFor.value_or("no");
    return answer;
}

std::string BookAnswers::mayRecord(const std::string& machine, const std::string& task) const {
    verbs::JobDraft draft;
    draft.record.machine = tale_.machine(machine);
    draft.record.task = tale_.tasks.at(machine + "/" + task);
    draft.record.date = book_.today();
    // With its own figure it is another one than what the tale may have told of that day.
    draft.record.meter = book_.meterNow(draft.record.machine).value_or(units::Hours{100});
    std::int64_t last = 1'000'000;
    const auto change = verbs::recordJob({book_, [&last] { return ++last; }}, std::move(draft));
    if (!change) {
        const auto fault = change.error().fault;
        return fault == base::Fault::IsOut || fault == base::Fault::NothingThere
                   ? "no: nothing fitted there"
                   : "no: refused, " + change.error().field.text();
    }
    for (const picture::Row& row : change->rows)
        if (const auto* record = std::get_if<upkeep::Record>(&row); record != nullptr && record->item)
            return "yes, of " + tale_.nameOf(record->item->value());
    return "yes";
}

std::vector<Demand> BookAnswers::followUps(const std::string& machine) const {
    std::vector<Demand> demands;
    for (const auto& open : book_.followUps(tale_.machine(machine)))
        demands.push_back({open.rule.what, tale_.nameOf(open.origin), open.since.iso(), open.due});
    return demands;
}

}  // namespace wm::tale
