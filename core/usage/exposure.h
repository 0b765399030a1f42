// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/calendar/date.h"
#include "core/units/quantity.h"
#include "core/usage/atom.h"

namespace wm::usage {

/// Everything that says how one machine was used. Only rows of that machine, struck ones left out, in any
/// order.
struct UseFacts {
    std::vector<HourReading> hourReadings;
    std::vector<DistanceReading> distanceReadings;
    std::vector<Outing> outings;
    std::vector<Wash> washes;
    std::vector<Crash> crashes;
};

/// A day on it is a mud day.
inline bool isMuddy(Ground ground) {
    return ground == Ground::Mud || ground == Ground::Water;
}

/// The atoms of one machine, in order of `to`. The rules (with examples: core/README.md, Use):
/// - Between two readings the metered difference is the truth. Noted hours that add up to more are scaled
///   down to it; that fall short by no more than the tolerance (for each outing 0.1 h + 5 % of its noted
///   hours) are scaled up; beyond that the rest is one Unlogged atom over the interval and the notes stand.
///   Shares are whole hundredths by largest remainder, of equal remainders the earlier outing's first.
/// - An outing without noted hours takes the metered remainder of its interval, shared evenly among such
///   outings. Outside metered intervals it is Assumed: from 0, best = the mean of the machine's known
///   outings, high = the longest of them or twice the mean, whichever is more; without any known outing
///   best = 0 and the high end is open.
/// - Replaced and Reset start a segment; what the old one counted up to `before` still counts, and without
///   `before` the interval is not metered. RolledOver: the meter starts again from 0 each `rollsAt`. From
///   Stopped until Resumed, Replaced or Reset the notes stand by themselves, as they do before the first and
///   after the last reading, and where a later reading is lower than the one before it without a word why.
/// - A reading counts at its moment: riding of the same day is before a reading taken Riding or AfterRiding.
/// - The same for distance, in whole metres, with a tolerance of 1 km + 5 % an outing. What the odometer
///   knows and nobody noted is an Unlogged atom of its own, without hours.
/// - An hour meter that counts transport as well (by vibration, in the van) says at most how much was ridden:
///   notes that add up to more are scaled down to it as ever; if they fall short, they stand, and the rest is
///   one Unlogged atom from 0 to all of it, best 0 (AtMost). Outings without noted hours share the rest as
///   best and high end, from 0.
/// Atoms of washes and crashes carry only their own count. Mud = ground Mud or Water.
enum class MeterCounts : std::uint8_t { Riding, TransportToo };
std::vector<Atom> atomsOf(const UseFacts& facts, MeterCounts counts = MeterCounts::Riding);

/// How many riding times lie after `from` and up to `to`: each day has one, at (date, Riding). The measure by
/// which an Unlogged atom is shared out.
std::int64_t ridingTimes(calendar::Moment from, calendar::Moment to);

/// The part of an Unlogged atom that lies after `after` and up to `upTo`, or nothing if no riding time of it
/// does. All riding times: the atom as it is. Some: hours and distance from 0 to the whole, best by the share
/// of riding times, so rounded that the parts of any partition add up to the whole. An atom without a riding
/// time of its own stands at `to`.
std::optional<Atom> partOf(const Atom& unlogged, std::optional<calendar::Moment> after,
                           calendar::Moment upTo);

/// Exposure strictly after `after` (nothing: from the beginning) and up to and including `upTo`, of atoms in
/// order of `to`. Of an Unlogged atom that straddles an end the part counts (partOf); parts of one and the
/// same unlogged stretch together are never more than the whole. Of a Past atom cut by `after` anything from
/// none to all may lie after it; the best counts it whole.
Exposure exposure(std::span<const Atom> atoms, std::optional<calendar::Moment> after, calendar::Moment upTo);

/// What `exposure` adds up, atom by atom, and the parts of unlogged ones so that their plain sum is the
/// whole: of several parts of one stretch the first carries the high end.
std::vector<Atom> partsOf(std::span<const Atom> atoms, std::optional<calendar::Moment> after,
                          calendar::Moment upTo);

/// Hundredths of an hour x permille: weighted hours that nobody has rounded yet.
using WeightedBracket = Bracket<std::int64_t>;

/// What an hour of the atom counts: the first weight that fits its ground and pace, else 1000. A stated past
/// counts as it was stated; of unlogged hours nobody stated a ground, so what fits is a weight for any ground
/// or for the unstated one.
std::int64_t permilleOf(std::span<const HourWeight> weights, const Atom& atom);
std::int64_t permilleOf(std::span<const HourWeight> weights, Ground ground, Pace pace);

/// The hours of the same atoms as `exposure` takes, weighted, and not rounded, so that parts add up.
WeightedBracket weightedHours(std::span<const Atom> atoms, std::span<const HourWeight> weights,
                              std::optional<calendar::Moment> after, calendar::Moment upTo);

/// In whole hundredths, halves up. For a sum, never for its parts. Example: 1.25 h x 1.5 and 0.35 h x 1.5:
/// 187500 + 52500 = 240000 = 2.4 h.
HoursBracket roundedHours(const WeightedBracket& hours);

/// The most that a machine can run in a day: what makes a reading MeterJumps.
inline constexpr units::Hours kMostHoursADay{24 * 100};
inline constexpr units::Metres kMostMetresADay{3'600'000};

/// The order of readings of one meter: of time, those of one moment in order of entry. But Riding is the
/// whole middle of a day: its plain readings come first and in the order of what the meter showed, whenever
/// they were entered.
bool comesBefore(const HourReading& a, const HourReading& b);

/// Does `reading` fit between those before and after it? Errors: MeterRunsBack (a lower figure and no word
/// why; `wanted` is the figure that it must not be under), MeterJumps (more than kMost...ADay since the last
/// reading), Negative, Empty (`rolls_at` of RolledOver), OutOfOrder (`rolls_at` not above both figures),
/// Inconsistent (a figure that moved on after Stopped without Resumed).
base::Result<void> checkReading(const UseFacts& facts, const HourReading& reading);
base::Result<void> checkReading(const UseFacts& facts, const DistanceReading& reading);

}  // namespace wm::usage
