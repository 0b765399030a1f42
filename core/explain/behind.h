// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/explain/why.h"

namespace wm::explain {

/// What lies behind one limit of a task: what was told or the stated past, then the use of each stretch with
/// one machine, its facts grouped by kind and weight. Reckoned stretch by stretch from the machines' own
/// atoms, apart from the countdown, which must come to the same.
std::vector<Step> behindOf(const book::Book& book, const book::DueLine& line,
                           const upkeep::LimitState& state);

}  // namespace wm::explain
