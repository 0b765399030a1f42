// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/upkeep/countdown.h"

namespace wm::upkeep {

/// From where and to where the limits of one task are reckoned.
struct Count {
    std::optional<calendar::Moment> after;  ///< the last completion; nothing: from the known start
    calendar::Date from{};                  ///< its day, or the day of the start
    calendar::Date since{};                 ///< first day of the subject's life, the zero of fixed marks
    calendar::Date on{};
    usage::Exposure behind;  ///< from `after` to the evening of `on`
    usage::Exposure before;  ///< up to `after`: where on the scale of fixed marks the completion stands
    std::optional<usage::HoursBracket> raw{};  ///< the hours of `behind` as ridden, if those are weighted
    bool countsOpen = false;  ///< some of it is from before anybody noted pieces and distance
    bool hoursLikely = true;  ///< the best figure of the hours means something
    struct Told {
        Counter counter = Counter::Hours;
        StatedSince since{};
        CountBracket behind{};  ///< with what was counted later
    };
    std::vector<Told> told{};  ///< one a counter at the most, in place of what was counted
    [[nodiscard]] const Told* toldOf(Counter counter) const;
    CountFrom countFrom = CountFrom::Completion;
    From side = From::Best;
};

template <class Q>
CountBracket bracketOf(const usage::Bracket<Q>& bracket) {
    return {bracket.low.count(), bracket.best.count(),
            bracket.high ? std::optional(bracket.high->count()) : std::nullopt};
}

/// What is behind of a counter; nothing of the calendar's, which no riding moves. `countsOpen`: as in Count.
CountBracket bracketOf(const usage::Exposure& exposure, Counter counter, bool countsOpen = false);
/// The same of all counters, with what is stated.
CountBracket behindOf(const Count& count, Counter counter);
CountBracket bracketOf(const usage::Atom& atom, Counter counter);

/// What a stated past still had to run after a baseline that states the total time of then.
usage::HoursBracket restOfPast(const usage::HoursBracket& past, const Record& baseline);

LimitState limitState(const Limit& limit, const Count& count);

}  // namespace wm::upkeep
