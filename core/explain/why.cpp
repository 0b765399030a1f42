// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/explain/why.h"

#include "core/explain/behind.h"
#include "core/upkeep/counters.h"

namespace wm::explain {

using upkeep::CountBracket;
using upkeep::Counter;
using upkeep::CountFrom;

namespace {

CountBracket exactly(std::int64_t count) {
    return {count, count, count};
}

Step versionOf(const upkeep::TaskVersion& task) {
    Step step{.kind = StepKind::Version, .name = task.source, .detail = task.page, .from = task.validFrom};
    step.governs = task.confirmed;
    for (const usage::HourWeight& weight : task.weights) {
        Step one{.kind = StepKind::Weight};
        one.name = weight.ground ? std::string(base::nameOf(*weight.ground)) : std::string{};
        one.detail = weight.pace ? std::string(base::nameOf(*weight.pace)) : std::string{};
        one.permille = weight.permille;
        step.children.push_back(std::move(one));
    }
    return step;
}

Step originOf(const book::Book& book, const book::DueLine& line) {
    using upkeep::Origin;
    if (line.empty) {
        const auto* gone = book.ledger().find<items::Item>(line.empty->item);
        return {.kind = StepKind::NothingFitted,
                .name = gone == nullptr ? std::string{} : gone->name,
                .detail = line.empty->position,
                .from = line.empty->since.date};
    }
    if (line.last != nullptr) {
        const bool isBaseline = line.countdown.origin == Origin::Baseline;
        Step step{.kind = upkeep::wasNeverDone(*line.last) ? StepKind::NeverDone
                          : isBaseline                     ? StepKind::Baseline
                                                           : StepKind::Record,
                  .name = line.last->what,
                  .from = line.last->date};
        step.fact = line.last->id.value();
        return step;
    }
    const auto* item = line.item ? book.ledger().find<items::Item>(*line.item) : nullptr;
    const auto* machine = book.ledger().find<items::Machine>(line.machine);
    const auto since = item != nullptr      ? std::optional(item->since)
                       : machine != nullptr ? std::optional(machine->since)
                                            : std::nullopt;
    return {.kind = line.countdown.origin == Origin::KnownStart ? StepKind::KnownStart : StepKind::NoRecord,
            .from = since};
}

Step amountOf(const upkeep::LimitState& state) {
    Step step{.kind = StepKind::Amount, .to = state.dueOn};
    step.counter = state.limit.counter;
    step.figure = exactly(state.amount);
    step.limit = state.limit;
    step.isFirst = state.isFirst;
    if (!state.stoodAt)
        return step;
    step.makes = Makes::Sum;
    Step mark{.kind = StepKind::Mark};
    Step stood{.kind = StepKind::StoodAt};
    mark.counter = stood.counter = state.limit.counter;
    mark.figure = exactly(*state.stoodAt + state.amount);
    stood.figure = exactly(-*state.stoodAt);
    step.children = {std::move(mark), std::move(stood)};
    return step;
}

Step limitOf(const book::Book& book, const book::DueLine& line, const upkeep::LimitState& state) {
    const Counter counter = state.limit.counter;
    Step step{.kind = StepKind::Limit};
    step.counter = counter;
    step.figure = exactly(state.left);
    step.reached = state.reached;
    step.side = upkeep::isSafety(line.task->consequence) ? upkeep::From::High : upkeep::From::Best;
    step.makes = Makes::Difference;
    Step behind{.kind = StepKind::Behind};
    behind.counter = counter;
    behind.figure = state.behind;
    behind.raw = state.raw;
    if (!isCalendar(counter)) {
        behind.makes = state.raw ? Makes::RoundedSum : Makes::Sum;
        behind.children = behindOf(book, line, state);
    }
    step.children = {amountOf(state), std::move(behind)};
    return step;
}

// What the machine's task of that code is called; the code if it has none.
std::string nameOfCode(const book::Book& book, MachineId machine, const std::string& code) {
    for (const upkeep::TaskVersion* task : book.tasks(machine))
        if (task->code == code)
            return task->name;
    return code;
}

// What made it due, and of another job which one.
Step happenedOf(const book::Book& book, const upkeep::Countdown& down) {
    Step step{.kind = StepKind::Happened,
              .name = std::string(base::nameOf(*down.triggered)),
              .from = down.triggeredOn};
    const auto* record = down.triggeredBy ? book.ledger().find<upkeep::Record>(*down.triggeredBy) : nullptr;
    if (record == nullptr)
        return step;
    step.detail = nameOfCode(book, record->machine, record->code);
    step.fact = record->id.value();
    return step;
}

// Due before the next race, for it was ridden since.
Step raceOf(const outlook::EventAhead& race) {
    return {.kind = StepKind::Happened,
            .name = std::string(base::nameOf(upkeep::Happening::BeforeRace)),
            .to = race.first};
}

Step valueOf(const upkeep::ReachedValue& reached) {
    Step step{.kind = StepKind::Value, .name = reached.name, .from = reached.date};
    step.value = reached.value;
    step.valueLimit = reached.limit;
    step.detail = reached.unit;
    step.fact = reached.record.value();
    return step;
}

// Every n-th completion of another job.
void addOtherJobs(Step& root, const book::Book& book, const book::DueLine& line) {
    Step amount{.kind = StepKind::Amount};
    amount.figure = exactly(line.task->nth);
    Step done{.kind = StepKind::OtherJobs, .name = nameOfCode(book, line.machine, line.task->nthOf)};
    done.figure = exactly(line.countdown.othersDone);
    Step limit{.kind = StepKind::Limit};
    limit.figure = exactly(line.task->nth - line.countdown.othersDone);
    limit.makes = Makes::Difference;
    limit.governs = true;
    limit.children = {std::move(amount), std::move(done)};
    root.figure = limit.figure;
    root.makes = Makes::One;
    root.children.push_back(std::move(limit));
}

Step extraOf(const book::DueLine& line) {
    Step step{.kind = StepKind::Extra, .name = line.task->extra};
    step.figure = exactly(line.countdown.extraIn);
    step.count = line.task->everyNth;
    return step;
}

}  // namespace

Step why(const book::Book& book, const book::DueLine& line) {
    const upkeep::Countdown& down = line.countdown;
    Step root{.kind = StepKind::Task, .name = line.task->name};
    if (down.limits.size() > 1)
        root.detail = base::nameOf(line.task->combine);
    // What made it due whatever the limits say comes before them.
    if (down.triggered)
        root.children.push_back(happenedOf(book, down));
    const auto& event = line.standing.event;
    if (!down.triggered && down.beforeNextRace && event &&
        line.standing.kind == outlook::StandingKind::BeforeEvent && event->kind == outlook::EventKind::Race)
        root.children.push_back(raceOf(*event));
    if (down.value)
        root.children.push_back(valueOf(*down.value));
    root.children.push_back(versionOf(*line.task));
    if (const auto* item = line.item ? book.ledger().find<items::Item>(*line.item) : nullptr)
        root.children.push_back(
            {.kind = StepKind::Item, .name = item->name, .detail = line.task->position, .from = item->since});
    root.children.push_back(originOf(book, line));
    for (std::size_t at = 0; at < down.limits.size(); ++at) {
        Step limit = limitOf(book, line, down.limits[at]);
        limit.governs = &down.limits[at] == book::decidingLimit(line);
        if (limit.governs) {
            root.figure = limit.figure;
            root.reached = limit.reached;
            root.counter = limit.counter;
            root.makes = Makes::One;
        }
        root.children.push_back(std::move(limit));
    }
    if (line.task->nth > 0 && !line.empty)
        addOtherJobs(root, book, line);
    if (down.extraIn > 0)
        root.children.push_back(extraOf(line));
    return root;
}

}  // namespace wm::explain
