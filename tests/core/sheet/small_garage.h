// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/book/book.h"

namespace wm::sheet {

inline constexpr MachineId kHeron{1};
inline constexpr MachineId kPlover{2};
inline constexpr TaskId kTyre{20};
inline constexpr TaskId kLinkage{21};
inline constexpr JointId kAxleNut{30};
inline constexpr StockLineId kGrease{40};
inline constexpr StockLineId kTyreLine{41};

/// Thursday 14 May 2026.
calendar::Date smallToday();

/// Two invented machines. On the Heron a tyre and a linkage are picked for Friday's window from 18:00 to
/// 20:00: 35 + 35 min of work, 5 + 11 + 24 min of access. On the Plover nothing.
std::vector<picture::Row> smallGarage();

book::Book bookOf(std::vector<picture::Row> rows);

}  // namespace wm::sheet
