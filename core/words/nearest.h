// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace wm::words {

/// The names that somebody who typed this may have meant, the likeliest first, at most so many; none where no
/// name is like it. "rear-axel-nut" may be "Rear axle nut".
std::vector<std::string> nearest(std::string_view typed, std::span<const std::string> names,
                                 std::size_t most);

}  // namespace wm::words
