// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <string_view>

namespace wm::weekend {

/// What a step of this code frees in the starters: for files that were written before a step said so. A step
/// that frees several positions has a line for each, with its place from 0.
struct FreedByCode {
    std::string_view step;
    std::size_t place;
    std::string_view position;
};
std::span<const FreedByCode> freedByCode();

}  // namespace wm::weekend
