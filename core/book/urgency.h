// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>

#include "core/book/book.h"

namespace wm::book {

/// How pressing a job is before the next event.
enum class Urgency : std::uint8_t {
    Must,     ///< due by then, and a matter of safety or of finishing
    Should,   ///< due by then, and a matter of money or wear
    CanWait,  ///< in hand
    NeverRecorded,
    PutOff
};
Urgency urgencyOf(const DueLine& line);

}  // namespace wm::book
