// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

namespace wm::app {

/// The version that the program states and writes into its files.
inline constexpr std::string_view kVersion = "0.9.0";

}  // namespace wm::app
