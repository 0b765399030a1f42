// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

#include "core/base/result.h"
#include "core/calendar/date.h"
#include "core/units/decimal.h"
#include "core/usage/exposure.h"

namespace wm::items {

// What a used machine has behind it, from what can be seen and what is said: each piece of evidence says
// something by itself, then they are put together. Nothing here is averaged, and no figure that the mechanic
// did not type is used: what a chain lasts, where its limit is, how much is ridden in a season, all that is
// his. In words: ui/pages/tasks/evidence_words.h.

/// How the hour meter came to be on the machine.
enum class MeterFitted : std::uint8_t { Unknown, FromNew, Later };

/// It has at least what the meter shows. Fitted from new and never stopped: that and no more. Fitted later:
/// likely that and what was behind it then, by somebody's word.
struct MeterShows {
    units::Hours shown{};
    MeterFitted fitted = MeterFitted::Unknown;
    std::optional<units::Hours> before{};
};

/// What the seller says is likely, and bounds nothing.
struct SellersWord {
    units::Hours likely{};
};

/// Seasons ridden, with the hours of one: a range bounds, one figure is likely.
struct SeasonsRidden {
    units::Decimal seasons{};
    units::Hours low{};
    std::optional<units::Hours> high{};
};

enum class WornPart : std::uint8_t { Chain, Disc, Bore };

/// A part measured between as new and its limit. With the hours that such a part lasts from new to the limit
/// it says what the part has behind it. The machine is not its chain: parts are renewed, so it has at least
/// as much, if the part was fitted new to it, and nobody knows how much more.
/// Chain 317.5 mm over the links as new, 320.0 at the limit, 319.0 now: 60 % worn; chains last 15 to 30 h
/// here: 9 to 18 h behind the chain, at least 9 h behind the machine.
struct WearSeen {
    WornPart part = WornPart::Chain;
    units::Decimal asNew{};
    units::Decimal limit{};
    units::Decimal now{};
    std::optional<units::Hours> lifeLow{};
    std::optional<units::Hours> lifeHigh{};
    bool newHere = true;  ///< fitted new to this machine
};

/// The last four figures on a tyre's flank: week and year of its making. An age, no hours.
struct TyreStamp {
    std::string code{};
};

using Evidence = std::variant<MeterShows, SellersWord, SeasonsRidden, WearSeen, TyreStamp>;

/// What one piece of evidence says.
struct Claim {
    std::optional<units::Hours> low{};  ///< of the machine: at least
    std::optional<units::Hours> best{};
    std::optional<units::Hours> high{};           ///< at most
    std::optional<usage::HoursBracket> ofPart{};  ///< what the part alone has behind it
    std::optional<std::int64_t> wornPercent{};    ///< of the way from new to the limit
    std::optional<calendar::Date> madeIn{};       ///< Monday of the week

    friend bool operator==(const Claim&, const Claim&) = default;
};

/// Reckoned hours are whole ones, the low end rounded down and the high end up: the evidence is no surer.
/// Errors: Negative, TooLarge (hours, "seasons" over 100), NotPositive ("seasons"), OutOfOrder
/// ("season_high", "life_high" under the low end), Inconsistent ("limit" that is as new; "before" of a meter
/// that was not fitted later), Implausible ("now" on the far side of new, or four times past the limit),
/// Malformed ("code" that is not four figures with a week from 01 to 53), InFuture ("code").
base::Result<Claim> claimOf(const Evidence& evidence, calendar::Date today);

/// Claims that can't both be right: what `low` holds for the least is more than what `high` holds for the
/// most.
struct Contradiction {
    std::size_t low = 0;
    std::size_t high = 0;
    friend bool operator==(const Contradiction&, const Contradiction&) = default;
};

struct Verdict {
    /// Nothing while claims contradict each other, or no claim says anything of the machine.
    std::optional<usage::HoursBracket> machine{};
    std::optional<std::size_t> lowBy{};  ///< the claim that each end comes from
    std::optional<std::size_t> bestBy{};
    std::optional<std::size_t> highBy{};
    std::vector<Contradiction> contradictions{};
    std::vector<std::size_t> outside{};  ///< claims whose likely figure lies outside the bracket
};

/// The low end is the largest of the lows, the high end the smallest of the highs (open without one); likely
/// is the largest likely figure that is claimed, brought into the bracket, or the low end without one: rather
/// too much behind it than too little.
Verdict weigh(std::span<const Claim> claims);

}  // namespace wm::items
