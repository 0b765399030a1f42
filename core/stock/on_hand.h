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
    bool tooOld = false;  ///< past best-before, or opened longer than the line allows
    std::optional<calendar::Date> goodUntil{};
};

struct OnHand {
    StockLineId line{};
    std::int64_t amount = 0;  ///< all of it; may be negative if more was used than was ever booked in
    std::int64_t usable = 0;  ///< without what is too old, never negative
    std::int64_t onOrder = 0;
    std::vector<LotOnHand> lots{};  ///< opened first, then by best-before
};

/// What stands on the shelf on a date, one entry a line, in the order of `lines`.
std::vector<OnHand> onHand(std::span<const StockLine> lines, std::span<const Lot> lots,
                           std::span<const StockMove> moves, std::span<const StockOrder> orders,
                           calendar::Date on);

/// Takes `amount` of a line from its containers: opened ones first, then the one that ages first. More than
/// is there is taken all the same (the shelf was miscounted), from no container.
std::vector<std::pair<std::optional<LotId>, std::int64_t>> drawFrom(const OnHand& line, std::int64_t amount);

}  // namespace wm::stock
