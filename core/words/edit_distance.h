// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace wm::words {

/// How many letters have to be put in, left out, changed or swapped with their neighbour to make one of the
/// other (optimal string alignment); stops at `most` + 1.
std::size_t errorsBetween(std::string_view a, std::string_view b, std::size_t most);

/// A word with what a search needs of it at hand.
struct Letters {
    std::string_view text{};
    std::uint64_t which = 0;  ///< the letters and digits that occur, a bit each
};
Letters lettersOf(std::string_view word);

/// How far what was typed can be taken for a word: 1 is the word itself, down to 0 for "not meant". The
/// beginning of a word counts while it is being typed; errors of the hand (a key beside, two turned round,
/// one left out, one too many) cost by how easily they happen, in the first letter as in any other. Words
/// with digits in them are never guessed at: M6 is not M8. Example: "acle" for "axle" 0.83 (x and c are
/// neighbours), "axl" 0.91, "reer" for "rear" 0.75.
double likeness(const Letters& typed, const Letters& word);

}  // namespace wm::words
