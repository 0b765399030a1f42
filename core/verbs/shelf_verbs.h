// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>

#include "core/verbs/verb.h"

namespace wm::verbs {

base::Result<picture::Change> saveStockLine(const VerbContext& context,
                                            stock::StockLine line);  ///< Duplicate part number
/// A new line together with what is there already (`counted`, 0 = nothing). Errors of saveStockLine and
/// countStock.
base::Result<picture::Change> addStockLine(const VerbContext& context, stock::StockLine line,
                                           std::int64_t counted);
base::Result<picture::Change> saveLot(const VerbContext& context, stock::Lot lot);
/// A purchase may bring a new lot (it is given its id, line and, if it has none, day of receipt). Used and
/// Lost go out whatever the sign of the amount; Bought must be positive.
base::Result<picture::Change> moveStock(const VerbContext& context, stock::StockMove move,
                                        std::optional<stock::Lot> newLot);
/// What a stock-take found in one container, or of the whole line without one: what is missing is taken as
/// stock::drawFrom says.
base::Result<picture::Change> countStock(const VerbContext& context, StockLineId line,
                                         std::optional<LotId> lot, std::int64_t counted,
                                         calendar::Date date);  ///< NothingToDo if it agrees
base::Result<picture::Change> orderStock(const VerbContext& context, stock::StockOrder order);

}  // namespace wm::verbs
