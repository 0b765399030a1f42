// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/calendar/date.h"
#include "core/stock/rows.h"

namespace wm::stock {

struct LotOnHand {
    std::optional<LotId> lot{};  ///< nothing: not in any known container
    std::int64_t amount = 0;
    bool opened = false;
    bool tooOld = false;                        ///< past best-before, or opened longer than the line allows
    std::optional<calendar::Date> goodUntil{};  ///< the last good day: whichever of the two comes first
};

struct OnHand {
    StockLineId line{};
    std::int64_t amount = 0;  ///< all of it; may be negative if more was used than was ever booked in
    std::int64_t usable = 0;  ///< without what is too old, never negative
    std::int64_t onOrder = 0;
    std::vector<LotOnHand>
        lots{};  ///< what is not empty: opened first, then by last good day, loose ones last
};

/// What stands on the shelf on the evening of a date, one entry a line, in the order of `lines`. Later moves,
/// orders and openings do not count. An order is worked off by the purchases that name it.
std::vector<OnHand> onHand(std::span<const StockLine> lines, std::span<const Lot> lots,
                           std::span<const StockMove> moves, std::span<const StockOrder> orders,
                           calendar::Date on);

/// Takes `amount` of a line from its containers: opened ones first, then the one that ages first, then what
/// is in no container, and what is too old only when nothing else is left. More than is there is taken all
/// the same (the shelf was miscounted), from no container. Each container once; amounts add up to `amount`.
/// Example: 120 ml in an opened bottle, 1000 ml in a full one: 200 ml = 120 from the first, 80 from the
/// second.
std::vector<std::pair<std::optional<LotId>, std::int64_t>> drawFrom(const OnHand& line, std::int64_t amount);

}  // namespace wm::stock
