// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "core/upkeep/countdown.h"

namespace wm::upkeep {

/// Reads what is remembered of a count, in the unit that it is said in: "12" (exactly that), "10..15..25" (at
/// least, likely, at most), "10..25" (the ends alone), "10.." (at least); also with dashes or "to" between,
/// "?" for an end that nobody knows, and "none" or "no". Errors, each naming `field`: Empty, those of the
/// numbers, Malformed (more than three figures, nothing known at all), OutOfOrder.
base::Result<CountBracket> parseBracket(std::string_view field, std::string_view text, Counter counter);

}  // namespace wm::upkeep
