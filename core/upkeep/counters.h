// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/upkeep/task.h"

namespace wm::upkeep {

/// True for what goes by the calendar, ridden or not.
constexpr bool isCalendar(Counter counter) {
    return counter == Counter::Days || counter == Counter::Months;
}

}  // namespace wm::upkeep
