// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/upkeep/task.h"

namespace wm::upkeep {

/// The limits of an interval as a manual prints them, in one line.
struct TypedInterval {
    std::vector<Limit> limits{};  ///< counter, every and first; nothing else is printed
    Combine combine = Combine::First;
};

/// Reads "15 h", "1000 km or 12 months", "first 3 h, then 15 h / 6 months", "50 h and 2 years": limits with
/// "or" or "/" between them fall due at the first, with "and" or "+" at the last. Weeks are days, years
/// months. Errors, each naming `field`: Empty; those of the numbers; WrongUnit (a word that counts nothing,
/// or none); Inconsistent ("or" mixed with "and", a run-in in another unit); Duplicate (the same unit twice);
/// NotPositive.
base::Result<TypedInterval> parseInterval(std::string_view field, std::string_view text);

/// "first 3 h, then 15 h or 6 months": what parseInterval reads back.
std::string intervalText(const std::vector<Limit>& limits, Combine combine, char mark = '.');
/// "15 h", "12.5 km", "6 months", "1 wash"
std::string countText(std::int64_t amount, Counter counter, char mark = '.');

}  // namespace wm::upkeep
