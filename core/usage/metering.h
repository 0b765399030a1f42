// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/usage/exposure.h"

namespace wm::usage {

// Hour meters and odometers follow the same rules; here both are plain counts (hundredths of an hour,
// metres).

struct Figure {
    calendar::Moment at{};
    base::Entered entered = 0;
    std::int64_t id = 0;
    MeterEvent event = MeterEvent::Plain;
    std::int64_t shown = 0;
    std::optional<std::int64_t> before;
    std::optional<std::int64_t> rollsAt;
    std::optional<std::int64_t> outing{};  ///< at whose end it was read
};

template <class Unit>
Figure figureOf(const ReadingOf<Unit>& reading) {
    const auto count = [](const std::optional<Unit>& value) {
        return value ? std::optional(value->count()) : std::nullopt;
    };
    return {
        {reading.date, reading.part}, reading.entered,
        reading.id.value(),           reading.event,
        reading.shown.count(),        count(reading.before),
        count(reading.rollsAt),       reading.outing ? std::optional(reading.outing->value()) : std::nullopt};
}

/// As for readings.
bool comesBefore(const Figure& a, const Figure& b);

/// In that order.
template <class Unit>
std::vector<Figure> figuresOf(const std::vector<ReadingOf<Unit>>& readings);

/// What the meter ran from one reading to the next; nothing if the two don't say.
std::optional<std::int64_t> ranBetween(const Figure& earlier, const Figure& later);

/// True if a meter stands still after `figure`, having stood (or not) before it.
bool standsAfter(bool stoodBefore, const Figure& figure);

/// One outing as its rider noted it.
struct Note {
    calendar::Moment at{};
    std::optional<std::int64_t> amount;
    std::int64_t outing = 0;
    base::Entered entered = 0;
};

/// For each note the index of the reading that closes its stretch, or how many readings there are. An outing
/// at whose end the meter was read lies before that reading and after the one before it. Another one of that
/// day lies before the outing that was told after it, else at the end of the day.
std::vector<std::size_t> closedBy(std::span<const Figure> figures, std::span<const Note> notes);

/// For each outing base + 5 % of what was noted may be missing from the notes.
struct Tolerance {
    std::int64_t base = 0;
    bool mayCountMore = false;  ///< than riding: no note is scaled up
};

struct Use {
    Bracket<units::Quantity<Figure>> amount{};
    Known known = Known::Noted;
};

/// What the meter knows and nobody noted.
struct Rest {
    calendar::Moment from{};
    calendar::Moment to{};
    std::int64_t amount = 0;
    std::int64_t closedBy = 0;  ///< id of the reading
};

struct Metered {
    std::vector<Use> uses;  ///< one a note, in their order
    std::vector<Rest> rests;
};

/// Brings notes and readings (both in order of time) together by the rules of atomsOf.
Metered meter(std::span<const Figure> figures, std::span<const Note> notes, Tolerance tolerance);

/// `whole` shared by `weights` (equally if they are all zero) in whole counts by largest remainder; of equal
/// remainders the first. The shares add up to `whole`.
std::vector<std::int64_t> sharesOf(std::int64_t whole, std::span<const std::int64_t> weights);

}  // namespace wm::usage
