// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <functional>

namespace wm::base {

/// Asked again and again during long work, of which `done` of `of` is behind it; false stops it.
using Progress = std::function<bool(std::size_t done, std::size_t of)>;

}  // namespace wm::base
