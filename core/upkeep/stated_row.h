// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>

#include "core/calendar/date.h"
#include "core/upkeep/counters.h"

namespace wm::upkeep {

/// What somebody says lies between a job and the evening of a day: at least, likely, at most; an end that is
/// left out is one that nobody knows. Of Days it is how old the job was on that day. What comes later is
/// counted on from there. Without a job: what lies between any job of the machine that was done on the day of
/// the record and that evening.
struct Stated {
    Counter counter = Counter::Hours;
    std::int64_t low = 0;
    std::optional<std::int64_t> best{};
    std::optional<std::int64_t> high{};
    calendar::Date upTo{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("counter", self.counter);
        visit("low", self.low);
        visit("best", self.best);
        visit("high", self.high);
        visit("up_to", self.upTo);
    }
    friend bool operator==(const Stated&, const Stated&) = default;
};

}  // namespace wm::upkeep
