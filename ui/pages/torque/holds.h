// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>

namespace wm::ui {

/// For which machines a figure is said: all of the model in those years, or the one.
enum class Holds : std::uint8_t { ForAll, ForOne };

}  // namespace wm::ui
