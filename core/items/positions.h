// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string_view>

namespace wm::items {

/// Can a machine be ridden with nothing in a position that something was taken off?
enum class Need : std::uint8_t {
    Needed,    ///< it is not whole without
    MayBeOff,  ///< it rides without
    Unknown    ///< nobody can say: words of the rider's own
};

/// By the last word of a path ("piston" of "engine/piston"), whatever its case. Common practice, no source.
Need needOf(std::string_view path);

}  // namespace wm::items
