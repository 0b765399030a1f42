// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/fastening/generic.h"

namespace wm::sheet {

/// What stands over and under every generic figure, on screen and paper alike.
std::string_view genericTitle();
std::string_view genericCaution();

/// "4.2 to 6.2 N·m": two digits, the high end never rounded up.
std::string genericBandText(const fastening::GenericBand& band, char mark);
/// What the band rests on, a line each.
std::vector<std::string> genericAssumptions(const fastening::GenericBand& band, char mark);

/// Why there is no generic figure and what to do instead.
std::string genericRefusalText(const fastening::GenericRefusal& refusal);

}  // namespace wm::sheet
