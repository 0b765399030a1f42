// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string_view>

#include "core/weekend/rows.h"

namespace wm::weekend {

/// Does an edge of the task itself crack this joint?
bool cracks(const upkeep::TaskVersion& task, std::string_view joint);

/// Does a job only look at this joint, or put a wrench on it? A check of the axles does: access steps of the
/// machine hold the joint and none of them is off, the task renews nothing and always uses nothing up, and no
/// edge of its own cracks the joint. A joint that no step holds is opened by whatever job lists it.
/// `off`: codes of the access steps that are off at the job; `steps`: all of the machine.
bool looksAt(const upkeep::TaskVersion& task, std::string_view joint,
             std::span<const StepVersion* const> steps, std::span<const std::string> off);

}  // namespace wm::weekend
