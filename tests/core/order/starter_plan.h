// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <set>
#include <string>
#include <vector>

#include "core/exchange/starter.h"
#include "core/weekend/plan.h"
#include "tests/core/order/order_truths.h"

namespace wm::order {

/// What the plans of one starter say to do at the stand, by the table tests/data/order/bindings.json. Only
/// here do codes and words of the starters meet the words of the truths.
class StarterPlan {
  public:
    StarterPlan(exchange::Starter starter, const Json& bindings);

    using Tasks = std::vector<const upkeep::TaskVersion*>;
    /// The acts of the plan for these tasks, picked in that order: as the program orders and words them, each
    /// joint torqued at its last place, as the job sheet prints it; then what is to be done at once; then
    /// what comes later.
    [[nodiscard]] Acts actsOf(const Tasks& tasks) const;
    /// All acts that there are in the plans of its single tasks.
    [[nodiscard]] std::set<std::string> sayable() const;
    /// Codes and texts that the table does not know.
    [[nodiscard]] std::vector<std::string> unbound() const;
    [[nodiscard]] const exchange::Starter& starter() const { return starter_; }

  private:
    class Teller;
    [[nodiscard]] std::string jointName(const std::string& code) const;

    exchange::Starter starter_;
    const Json& bindings_;
};

}  // namespace wm::order
