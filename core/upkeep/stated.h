// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>

#include "core/upkeep/countdown.h"

namespace wm::upkeep {

/// What the record itself says; else the newest word about the machine as a whole (`told`, in any order),
/// pieces only. That one counts whole for a job of its day. Of a later job it says how much it can be at most
/// (none at all is none of any part), of an earlier one, or of one that was never done, how much it is at
/// least. Nothing if nobody said anything.
std::optional<StatedSince> statedSince(const Record& last, Counter counter,
                                       std::span<const Record* const> told);

}  // namespace wm::upkeep
