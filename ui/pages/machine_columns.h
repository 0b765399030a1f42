// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>

namespace wm::ui {

/// Where the machines' columns stand, from one edge of the window to the other; heads and Bench share it.
inline constexpr int kGutter = 120;
inline constexpr int kLeastColumn = 190;

constexpr int columnWidth(int windowWidth, int machines) {
    return std::max((windowWidth - kGutter) / std::max(machines, 1), 1);
}

}  // namespace wm::ui
