// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

#include "core/base/phrase.h"

namespace wm::weekend {

/// An access step is named by the state it leaves: "Rear wheel out, caliper hanger free". What goes back on
/// in its refit: "Rear wheel, caliper hanger"; empty if the name does not end in a word of taking off.
std::string partsOf(std::string_view stepName);

/// Of a condition, in which nothing comes off, what the machine stands on: "stand" of "Clean, cold, on the
/// stand, secured"; else empty.
std::string standingOf(std::string_view stepName);

/// The refit in words: "Refit: Rear wheel, caliper hanger"; "Fill: Coolant" of what was drained; "Off the
/// stand" of "Clean, on the stand"; "Undo: ..." of what is of another kind.
base::Phrase refitPhrase(std::string_view stepName);

}  // namespace wm::weekend
