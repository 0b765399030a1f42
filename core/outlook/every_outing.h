// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/upkeep/task.h"

namespace wm::outlook {

/// True for the limit of what is done with every outing, or with every other one.
constexpr bool isEveryOuting(const upkeep::Limit& limit) {
    return limit.counter == upkeep::Counter::Outings && limit.every <= 2;
}

}  // namespace wm::outlook
