// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "core/fastening/rows.h"

namespace wm::fastening {

/// What kind of joint a name speaks of, by words of the trade; Other if none of them is in it. Meant to
/// refuse rather too often: it stands between a chart typed in a hurry and a generic figure for an axle.
JointKind kindByName(std::string_view name);

/// True for a name of what holds crank, rod or head: fasteners that the manual stretches or turns by an
/// angle.
bool isStretchedByName(std::string_view name);

}  // namespace wm::fastening
