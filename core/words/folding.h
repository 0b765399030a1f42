// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace wm::words {

/// Lower case without accents, as far as European letters go: "Ölfilter Größe" -> "olfilter grosse". Signs,
/// blanks and the letters of other scripts stay as they are, bytes that are no UTF-8 too.
std::string withoutAccents(std::string_view text);

/// The same with everything else but letters and digits a single blank, so that what people mean to be the
/// same compares the same: " Öl-Filter" -> "ol filter".
std::string folded(std::string_view text);
std::vector<std::string> wordsOf(std::string_view text);  ///< of the folded text

/// An English word without the s of its plural: "bolts" -> "bolt", "brass" stays.
std::string singular(std::string word);

}  // namespace wm::words
