// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/calendar/date.h"
#include "core/fastening/rows.h"

namespace wm::fastening {

/// A joint that was loosened (or found moved) and not confirmed since.
struct HandTight {
    JointId joint{};
    calendar::Date since{};
    MarkKind why = MarkKind::Loosened;
    std::optional<RecordId> record{};
};

/// The joints whose last mark up to `on` leaves them open, oldest first. Marks in any order; of one day, the
/// one entered last counts. FoundFine and RiddenOpen neither open nor close.
std::vector<HandTight> handTight(std::span<const JointMark> marks, calendar::Date on);

}  // namespace wm::fastening
