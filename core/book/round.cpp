// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/book/round.h"

#include <algorithm>

#include "core/outlook/every_outing.h"

namespace wm::book {

bool isOnlyOfTheRound(const DueLine& line) {
    if (!outlook::isOfTheRound(*line.task))
        return false;
    const auto& limits = line.countdown.limits;
    const bool ranOut = line.standing.kind == outlook::StandingKind::Overdue &&
                        std::any_of(limits.begin(), limits.end(), [](const upkeep::LimitState& state) {
                            return !outlook::isEveryOuting(state.limit) && state.leftWithAllowance <= 0;
                        });
    return !ranOut;
}

}  // namespace wm::book
