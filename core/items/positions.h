// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace wm::items {

// The positions that the program knows, by code, with other words for them: what may be fitted there, and
// whether a machine can be ridden without. A position is known by the last word of its path ("piston" of
// "engine/piston"), whatever its case. Common practice, no source. A place in the rider's own words is
// unknown: it takes anything, and nobody can say whether it must be filled.

/// Can a machine be ridden with nothing in a position that something was taken off?
enum class Need : std::uint8_t {
    Needed,    ///< it is not whole without
    MayBeOff,  ///< it rides without
    Unknown    ///< nobody can say: words of the rider's own
};
Need needOf(std::string_view path);

/// The path in the words of the table: "Motor/Barrel" is "engine/cylinder". What it does not know stays, in
/// small letters.
std::string codedPath(std::string_view path);

/// May something of this kind sit there? A kind that nobody said, or that the table does not know, and a
/// place that it does not know: yes.
bool accepts(std::string_view path, std::string_view kind);

}  // namespace wm::items
