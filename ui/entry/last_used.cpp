// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/last_used.h"

#include <algorithm>

namespace wm::ui {

namespace {

struct Latest {
    base::Entered entered = -1;
    std::optional<MachineId> machine;
};

template <class R>
void look(const book::Book& book, Latest& latest) {
    const auto& rows = book.ledger().all<R>();
    if (!rows.empty() && rows.back().entered > latest.entered)
        latest = {rows.back().entered, rows.back().machine};
}

}  // namespace

std::optional<MachineId> lastMachine(const book::Book& book) {
    const auto machines = book.machines();
    if (machines.empty())
        return std::nullopt;
    Latest latest;
    look<usage::Outing>(book, latest);
    look<upkeep::Record>(book, latest);
    look<usage::HourReading>(book, latest);
    look<usage::Wash>(book, latest);
    look<upkeep::Snag>(book, latest);
    const auto isHere = [&](const items::Machine* machine) { return machine->id == latest.machine; };
    if (latest.machine && std::any_of(machines.begin(), machines.end(), isHere))
        return latest.machine;
    return machines.front()->id;
}

std::optional<PersonId> lastRider(const book::Book& book, MachineId machine) {
    const auto& outings = book.ledger().all<usage::Outing>();
    for (auto at = outings.rbegin(); at != outings.rend(); ++at)
        if (at->machine == machine && at->rider)
            return at->rider;
    return std::nullopt;
}

std::optional<PersonId> lastMechanic(const book::Book& book) {
    const auto& records = book.ledger().all<upkeep::Record>();
    for (auto at = records.rbegin(); at != records.rend(); ++at)
        if (at->by)
            return at->by;
    return std::nullopt;
}

}  // namespace wm::ui
