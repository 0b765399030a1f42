// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/book/book.h"
#include "core/weekend/plan.h"

namespace wm::book {

/// The version of today, active or not.
const weekend::StepVersion* stepOf(const Book& book, StepId step);

/// The working order to reach what lies under one access step, and to close again: as for a job that takes no
/// time and needs that step off. Errors as weekend::planWork; Unknown "step" if it is not in use.
base::Result<weekend::Plan> planOfStep(const Book& book, MachineId machine, std::string_view code);

/// Tasks in use that need the step off, and steps in use that need it off first, by name.
std::vector<std::string> neededBy(const Book& book, MachineId machine, std::string_view code);

/// The name of what an act is done to, out of these; its code if none of them bears it.
std::string nameOf(const upkeep::ActRef& act, const std::vector<const weekend::StepVersion*>& steps,
                   const std::vector<const fastening::JointVersion*>& joints,
                   const std::vector<const upkeep::TaskVersion*>& tasks);
/// The same out of what is in use on a machine.
std::string nameOf(const Book& book, MachineId machine, const upkeep::ActRef& act);

/// Whether both plans have the same acts in the same order, whatever they take.
bool sameOrder(const weekend::Plan& a, const weekend::Plan& b);

/// What a change of one access step does to plans; `now` and `after` are the books before and with it.
struct StepEffect {
    struct Compared {
        std::optional<weekend::Plan> now{};  ///< nothing: there is no such plan
        std::optional<weekend::Plan> after{};
        [[nodiscard]] bool changesMinutes() const;
        [[nodiscard]] bool changesOrder() const;
    };
    Compared alone{};   ///< what lies under this step alone
    Compared picked{};  ///< the jobs that are picked on its machine
    /// Names of joints of which it says an order, and which no access step or task in use opens: no plan
    /// holds it.
    std::vector<std::string> unopened{};
};
StepEffect effectOf(const Book& now, const Book& after, MachineId machine, std::string_view code);

}  // namespace wm::book
