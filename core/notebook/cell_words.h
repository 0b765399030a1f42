// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

#include "core/usage/rows.h"

namespace wm::notebook {

// What the words in a cell mean, in English, German, French, Italian and Spanish. Nothing: not known.

std::optional<usage::Ground> groundNamed(std::string_view cell);

/// What a line is about.
enum class Doing : std::uint8_t { Practice, Race, Other, NewMeter, Reading, Wash, Crash };
std::optional<Doing> doingNamed(std::string_view cell);

enum class Washing : std::uint8_t { None, ByHand, Pressure };
std::optional<Washing> washingNamed(std::string_view cell);

/// "yes", "x", "1" against "no", "-", "0" and nothing.
std::optional<bool> yesOrNo(std::string_view cell);

/// True if a note says that the hour meter was renewed or reset.
bool saysNewMeter(std::string_view note);
/// True for the words under a column of figures that add it up.
bool saysTotal(std::string_view cell);
/// True for what people write where they don't know: "?", "-", "n/a".
bool saysUnknown(std::string_view cell);
/// True for ditto marks.
bool saysSame(std::string_view cell);

}  // namespace wm::notebook
