// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/ids.h"

/// Who plays in the tests of items: two machines, and an engine with its piston that may go from one to the
/// other.
namespace wm::items {

inline constexpr MachineId kRed{901};
inline constexpr MachineId kBlue{902};
inline constexpr ItemId kEngine{1};
inline constexpr ItemId kPiston{2};

}  // namespace wm::items
