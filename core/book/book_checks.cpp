// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/book/book_checks.h"

#include "core/picture/facts.h"

namespace wm::book {

using base::Fault;
using picture::shortened;
using picture::versionOn;

void BookChecks::fact(calendar::Date day) {
    date("date", day);
    if (!failed())
        that(day <= book_.today(), Fault::InFuture, "date", day.iso(), book_.today().iso());
}

void BookChecks::notBefore(calendar::Date day, calendar::Date first) {
    if (!failed())
        that(day >= first, Fault::BeforeItsTime, "date", day.iso(), first.iso());
}

const items::Machine* BookChecks::machineOn(MachineId machine, calendar::Date day) {
    const auto* card = row<items::Machine>("machine", machine);
    fact(day);
    if (failed())
        return nullptr;
    notBefore(day, card->since);
    if (card->goneOn)
        that(day <= *card->goneOn, Fault::Retired, "machine", card->name, card->goneOn->iso());
    return card;
}

const upkeep::TaskVersion* BookChecks::taskOf(const base::Place& field, MachineId machine, TaskId task,
                                              calendar::Date day) {
    const upkeep::TaskVersion* version = versionOn(book_.ledger(), task, day);
    that(version != nullptr, Fault::Unknown, field, std::to_string(task.value()));
    if (version != nullptr)
        that(version->machine == machine, Fault::Inconsistent, field, version->name,
             machineName(book_.ledger(), machine));
    return version;
}

const upkeep::Snag* BookChecks::snagOf(const base::Place& field, MachineId machine, SnagId snag, bool open) {
    const auto* found = row<upkeep::Snag>(field, snag);
    if (found == nullptr)
        return nullptr;
    that(found->machine == machine, Fault::Inconsistent, field, shortened(found->what),
         machineName(book_.ledger(), machine));
    that(!open || !hasEnded(book_.ledger(), snag), Fault::NothingToDo, field, shortened(found->what));
    return found;
}

void BookChecks::lotOf(const base::Place& field, const std::optional<LotId>& lot, StockLineId line) {
    if (const auto* container = row<stock::Lot>(field, lot))
        that(container->line == line, Fault::Inconsistent, field, container->label);
}

}  // namespace wm::book
