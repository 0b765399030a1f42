// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sheet/job_sheet.h"

namespace wm::ui {

/// A rear evening on an invented machine, with everything that a sheet can carry: joints with and without
/// torque, confirmed and not, a range, stages, measurements, shortages, safety steps, two stages.
sheet::JobSheet sampleSheet();

}  // namespace wm::ui
