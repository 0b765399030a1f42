// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "core/upkeep/countdown.h"

namespace wm::upkeep {

/// Follow-ups that something else than a job made (a torque tool that was found out of tolerance), without
/// those that an answer with their origin and words has settled up to a day, and those of later days.
std::vector<FollowUp> openDemands(std::vector<FollowUp> demands,
                                  std::span<const FollowUpAnswer* const> answers, calendar::Date on);

}  // namespace wm::upkeep
