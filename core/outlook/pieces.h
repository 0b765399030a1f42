// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/outlook/ahead.h"

namespace wm::outlook {

/// The law of what an outing brings of a counter in whole pieces (`pressure`: of washes, only those with a
/// pressure washer); nullptr for what is no piece of its own (hours, metres, the outings themselves, days).
inline const PieceLaw* piecesOf(const Ahead& ahead, upkeep::Counter counter, bool pressure) {
    switch (counter) {
        case upkeep::Counter::Starts:
            return &ahead.starts;
        case upkeep::Counter::Washes:
            return pressure ? &ahead.pressureWashes : &ahead.washes;
        case upkeep::Counter::MudDays:
            return &ahead.mud;
        case upkeep::Counter::Crashes:
            return &ahead.crashes;
        default:
            return nullptr;
    }
}

}  // namespace wm::outlook
