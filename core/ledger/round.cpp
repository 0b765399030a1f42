// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/ledger/round.h"

#include <algorithm>

namespace wm::ledger {

namespace {

bool isEveryOuting(const upkeep::Limit& limit) {
    return limit.counter == upkeep::Counter::Outings && limit.every <= 2;
}

}  // namespace

bool isOnlyOfTheRound(const DueLine& line) {
    if (!outlook::isOfTheRound(*line.task))
        return false;
    const auto& limits = line.countdown.limits;
    const bool ranOut = line.standing.kind == outlook::StandingKind::Overdue &&
                        std::any_of(limits.begin(), limits.end(), [](const upkeep::LimitState& state) {
                            return !isEveryOuting(state.limit) && state.leftWithAllowance <= 0;
                        });
    return !ranOut;
}

}  // namespace wm::ledger
