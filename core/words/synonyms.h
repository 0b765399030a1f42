// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace wm::words {

/// Phrases of the trade that mean the same, each in searchWords() form. A thing that is called by one of
/// them is found by the others.
struct SameThing {
    std::vector<std::vector<std::string>> phrases;
};
std::span<const SameThing> sameThings();

/// The words that the schedules use for a folded word: "muffler" is "silencer", "olfilter" is "oil" "filter",
/// "bolts" is "bolt". The word itself if it has no other, or if it may mean several things ("barrel").
std::vector<std::string> meantBy(std::string_view word);

}  // namespace wm::words
