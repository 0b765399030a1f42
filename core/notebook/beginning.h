// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/items/rows.h"
#include "core/notebook/lines.h"

namespace wm::notebook {

/// What a notebook says of one machine's time before it.
struct Beginning {
    calendar::Date first{};  ///< the day of the first line
    std::optional<units::Hours>
        meterBefore{};  ///< the first figure of the meter without what was ridden up to it
    std::vector<std::pair<calendar::Date, units::Hours>> ridden{};  ///< as noted
};

/// `lines` in order of time.
Beginning beginningOf(const std::vector<const Line*>& lines, std::size_t machine);

/// Dates a card back to the first line of the notebook; true if that changed it. A card without a stated past
/// gets what the meter showed before the first ride as the least and the likely, with an open high end (a
/// meter may have been fitted late); a stated past is brought back by what was ridden since. A meter that
/// began with the first ride makes a new machine one that was new on that day.
bool dateBack(items::Machine& card, bool begins, const Beginning& beginning);

}  // namespace wm::notebook
