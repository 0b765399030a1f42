// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace wm::words {

/// The words of a text as a search compares them: lower case, accents and the plural's s dropped, threads in
/// two words ("M20 x 1,50" and "M20×1.5" are "m20" "x1.5"), words that say nothing ("the", "of") left out.
std::vector<std::string> searchWords(std::string_view text);

}  // namespace wm::words
