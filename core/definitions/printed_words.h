// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/fastening/rows.h"
#include "core/upkeep/task.h"

namespace wm::definitions {

// Figures of a manual as text that can be typed, both ways: what printed...() says, put...() reads back to
// the same figure. A blank figure is an empty text. `field` "figure".

std::string printedInterval(const upkeep::TaskVersion& task, char mark);  ///< "15 h or 6 months"; "2" of nth
std::string printedAmount(const upkeep::KitLine& line);                   ///< "850 ml", "2"
std::string printedLimit(const upkeep::MeasurePoint& point, char mark);   ///< "0.10 to 0.15 mm", "max 0.8 mm"
std::string printedTorque(const fastening::JointVersion& joint, char mark);  ///< "110 N·m", "18 to 22 lbf·ft"

/// The interval as typed takes the place of all limits; an allowance and "life limit" stay with their unit.
base::Result<void> putInterval(upkeep::TaskVersion& task, std::string_view typed);
/// Pieces, ml and g are whole; litres and kilograms are understood, and US and imperial measures. WrongUnit
/// for a fraction without its unit.
base::Result<void> putAmount(upkeep::KitLine& line, std::string_view typed);
/// "0.10-0.15", "max 0.8", "at least 1.0"; a bare figure is the end that stood there. Malformed if there was
/// none or both, WrongUnit for another unit than the measurement's.
base::Result<void> putLimit(upkeep::MeasurePoint& point, std::string_view typed);
/// Stages that hold the torque are put right with it; Inconsistent "stages" where that is not plain.
base::Result<void> putTorque(fastening::JointVersion& joint, std::string_view typed);

}  // namespace wm::definitions
