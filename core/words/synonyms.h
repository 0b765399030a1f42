// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/fastening/figure.h"

namespace wm::fastening {

/// The words of a text as a search compares them: lower case, accents and the plural's s dropped, threads in
/// two words ("M20 x 1,50" and "M20×1.5" are "m20" "x1.5"), words that say nothing ("the", "of") left out.
std::vector<std::string> searchWords(std::string_view text);

/// Phrases of the trade that mean the same, each in searchWords() form. A thing that is called by one of
/// them is found by the others.
struct SameThing {
    std::vector<std::vector<std::string>> phrases;
};
std::span<const SameThing> sameThings();

/// What a word says about the kind of figure that is wanted ("torque", "amount", "clearance"), if anything.
std::optional<FigureKind> kindMeantBy(std::string_view searchWord);

}  // namespace wm::fastening
