// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string_view>

#include "core/base/result.h"
#include "core/upkeep/task.h"

namespace wm::exchange {

/// More pieces, outings or washes than this at once are a typing error.
inline constexpr std::int64_t kMostPieces = 100'000;

/// So much of one counter of an interval.
struct Amount {
    upkeep::Counter counter = upkeep::Counter::Hours;
    std::int64_t count = 0;
};

/// "15 h", "2 mud days": a number, one blank, the word of a counter. Errors: WrongUnit, those of the number.
base::Result<Amount> parseAmount(std::string_view text);

}  // namespace wm::exchange
