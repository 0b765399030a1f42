// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

#include "core/base/names.h"
#include "core/usage/rows.h"

namespace wm::upkeep {

/// What an interval counts. Amounts are hundredths of an hour for Hours, metres for Metres, else pieces.
enum class Counter : std::uint8_t { Hours, Metres, Outings, Starts, Washes, MudDays, Crashes, Days, Months };

/// What kind of figure a counter is. Whatever is done alike for all counters of a kind asks this, so that one
/// more counter of pieces needs no line of its own.
enum class CounterKind : std::uint8_t { Hours, Metres, Pieces, Days, Months };

/// All that is to be said of a counter outside the windows: the one place that says it. How a piece adds up
/// and comes along is in core/usage/atom.h, its words on the screen in ui/words/figures.cpp.
struct CounterTraits {
    Counter of;
    CounterKind kind;
    std::string_view stored;  ///< in the file and in the exchange text
    std::string_view one;     ///< as it is typed and said in plain text: "1 mud day"
    std::string_view many;    ///< "2 mud days"
    std::int64_t example;     ///< a likely interval in these, for who typed none
    std::optional<usage::Piece> piece{};
    bool canBeScaled = true;  ///< with a whole schedule; no schedule says how often to crash
};
inline constexpr std::array kCounters{
    CounterTraits{Counter::Hours, CounterKind::Hours, "hours", "h", "h", 15},
    CounterTraits{Counter::Metres, CounterKind::Metres, "metres", "km", "km", 250},
    CounterTraits{Counter::Outings, CounterKind::Pieces, "outings", "outing", "outings", 3,
                  usage::Piece::Outings},
    CounterTraits{Counter::Starts, CounterKind::Pieces, "starts", "start", "starts", 10,
                  usage::Piece::Starts},
    CounterTraits{Counter::Washes, CounterKind::Pieces, "washes", "wash", "washes", 10, usage::Piece::Washes},
    CounterTraits{Counter::MudDays, CounterKind::Pieces, "mud days", "mud day", "mud days", 2,
                  usage::Piece::MudDays},
    CounterTraits{Counter::Crashes, CounterKind::Pieces, "crashes", "crash", "crashes", 1,
                  usage::Piece::Crashes, false},
    CounterTraits{Counter::Days, CounterKind::Days, "days", "day", "days", 30, {}, false},
    CounterTraits{Counter::Months, CounterKind::Months, "months", "month", "months", 12, {}, false},
};
static_assert(base::isWholeTable(kCounters), "each counter has its row, in order");
static_assert(std::all_of(kCounters.begin(), kCounters.end(), [](const CounterTraits& counter) {
    return counter.piece.has_value() == (counter.kind == CounterKind::Pieces);
}));

constexpr const CounterTraits& traitsOf(Counter counter) {
    return kCounters[static_cast<std::size_t>(counter)];
}

/// The counter of a piece; nothing for what no limit counts.
constexpr std::optional<Counter> counterOf(usage::Piece piece) {
    for (const CounterTraits& counter : kCounters)
        if (counter.piece == piece)
            return counter.of;
    return std::nullopt;
}

/// True for what goes by the calendar, ridden or not.
constexpr bool isCalendar(Counter counter) {
    const CounterKind kind = traitsOf(counter).kind;
    return kind == CounterKind::Days || kind == CounterKind::Months;
}

/// How many of what is stored are one of what is said: 100 hundredths are an hour.
constexpr std::int64_t partsOfOne(Counter counter) {
    switch (traitsOf(counter).kind) {
        case CounterKind::Hours:
            return 100;
        case CounterKind::Metres:
            return 1'000;
        case CounterKind::Pieces:
        case CounterKind::Days:
        case CounterKind::Months:
            break;
    }
    return 1;
}

}  // namespace wm::upkeep

namespace wm::base {
template <>
struct Names<upkeep::Counter> {
    static constexpr auto names = [] {
        std::array<std::string_view, upkeep::kCounters.size()> stored;
        for (std::size_t at = 0; at < stored.size(); ++at)
            stored[at] = upkeep::kCounters[at].stored;
        return stored;
    }();
};
}  // namespace wm::base
