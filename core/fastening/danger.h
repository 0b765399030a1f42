// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/fastening/rows.h"

namespace wm::fastening {

/// The one table of kinds whose failure can throw the rider: brakes, axles, pinch bolts, steering, pegs,
/// pivots, linkage, shock, swingarm, wheels, spokes, suspension, engine mounts, sprockets. A generic figure
/// is never given for them, whatever is known (nor for magnesium and joints by angle), and on the job sheet
/// their refit is signed and looked at by a second person.
bool dangerousKind(JointKind kind);

/// Whether it is, or may be, locked with something that has to cure before it is ridden.
bool cures(const JointVersion& joint);

}  // namespace wm::fastening
