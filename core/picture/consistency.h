// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <optional>
#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/picture/ledger.h"

namespace wm::picture {

// What must hold between the rows of a file.

/// Calls `act` with every table, facts that count only.
template <class Act>
void eachTable(const Ledger& ledger, Act&& act) {
    const auto visit = [&]<class... Tables>(const std::tuple<Tables...>*) {
        (act(ledger.all<typename Tables::value_type>()), ...);
    };
    visit(static_cast<const ForEachRow<detail::Tables>*>(nullptr));
}

/// The day of the first fact that names this machine; a Baseline, and a figure that its meter showed before a
/// used one came here, may be older and are left out.
std::optional<calendar::Date> firstFact(const Ledger& ledger, MachineId machine);
/// The day of the first fact that names this item.
std::optional<calendar::Date> firstFact(const Ledger& ledger, ItemId item);

/// Can all these moves have happened, one after the other? Errors: PositionTaken, InTwoPlaces, Cycle,
/// Retired, NotFitted; `given` is the id of the move.
base::Result<void> checkMoves(std::span<const items::Move> all);

/// The access steps of one machine that need each other in a circle, each before one that needs it, the first
/// once more at the end; empty if there are none.
std::vector<const weekend::StepVersion*> circleOfNeeds(std::span<const weekend::StepVersion* const> steps);
/// Errors: Cycle "needs" (`given` the names of such a circle, joined by arrows).
base::Result<void> checkNeeds(std::span<const weekend::StepVersion* const> steps);

}  // namespace wm::picture
