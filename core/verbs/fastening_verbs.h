// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/verbs/verb.h"

namespace wm::verbs {

// The version of joints, the marks on them, and the tools of the drawer.

/// A torque needs its source (Empty). OutOfOrder (range). With model years (sharedFrom, sharedTo) the version
/// goes to every machine of this maker and model in them, in the same verb; one whose own last version is for
/// itself alone keeps that. Empty "model" or "year" if the machine's card does not say them, OutOfOrder
/// "shared_from" if its year is not among them.
base::Result<picture::Change> saveJoint(const VerbContext& context, fastening::JointVersion version);
/// A whole chart of one machine in one go; faults are named under "joints[3].".
base::Result<picture::Change> saveJoints(const VerbContext& context, MachineId machine,
                                         std::vector<fastening::JointVersion> versions);
/// TooLarge "moved_count" if more moved than the joint has; Inconsistent for what can't be said of this kind
/// of mark.
base::Result<picture::Change> markJoints(const VerbContext& context, std::vector<fastening::JointMark> marks);
base::Result<picture::Change> saveTool(const VerbContext& context,
                                       fastening::Tool tool);  ///< Duplicate, OutOfOrder
/// Inconsistent "left_within" if it came good and left bad; Duplicate if this day has one of this tool.
base::Result<picture::Change> recordCalibration(const VerbContext& context,
                                                fastening::Calibration calibration);

}  // namespace wm::verbs
