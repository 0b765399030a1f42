// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/verbs/verb.h"

namespace wm::verbs {

// What a figure of the hour meter says of the time before the file.

units::Hours bestLife(const book::Book& book, MachineId machine, calendar::Moment when);

/// When a meter showed a figure: what the machine had behind it then, by the best end (it may be less than
/// what it had on its first day here, and below 0 where its past is stated as less than the meter ran since),
/// and the last reading before; none if it was before all of them.
struct Shown {
    units::Hours life{};
    std::optional<calendar::Moment> readBefore{};
};
/// Inconsistent "meter" (it was never read), TooLarge "meter" (more than it shows now).
base::Result<Shown> whenShown(const book::Book& book, MachineId machine, units::Hours shown);

/// The last day on whose evening the machine had no more than `life` behind it: what was ridden since is then
/// rather too much than too little. Nothing: it was before the first day.
std::optional<calendar::Moment> lastMomentWith(const book::Book& book, const items::Machine& machine,
                                               units::Hours life);

}  // namespace wm::verbs
