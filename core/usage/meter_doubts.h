// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/usage/exposure.h"

namespace wm::usage {

// What stands in a file and can't be so, or is hardly so, of one machine's meters. Named, never left out.

/// A reading that checkReading would not have taken after the one before it, and why.
struct OddReading {
    std::int64_t reading = 0;  ///< its id
    calendar::Moment at{};
    std::optional<calendar::Moment> from{};  ///< the reading before it
    bool isUnmetered = false;  ///< the two don't say what was ridden between them: the notes stand
    base::Error error;
};
/// In the order of the meter.
std::vector<OddReading> oddReadings(const std::vector<HourReading>& readings);
std::vector<OddReading> oddReadings(const std::vector<DistanceReading>& readings);

/// Notes of some hours while the hour meter ran hardly, or not at all: has it stopped?
struct MeterStood {
    calendar::Moment from{};  ///< the reading before
    calendar::Moment to{};    ///< and the one after
    std::int64_t closedBy = 0;
    units::Hours noted{};
    units::Hours ran{};
    friend bool operator==(const MeterStood&, const MeterStood&) = default;
};
/// Each stretch from one reading to the next in which more than kMostNotedOfRun times what the meter ran was
/// noted, and more than it by 0.1 h + 5 % an outing (and by 1 h if both show whole hours). Readings in the
/// middle of a day's riding part no stretches: nobody knows which outing they followed. Not from Stopped to
/// Resumed.
std::vector<MeterStood> whereItStood(const UseFacts& facts);
/// As a verb asks: MeterStood "noted", with what was noted and what ran.
tl::unexpected<base::Error> questionOf(const MeterStood& stood);

/// From memory, without a source: who notes the time by a watch, pauses and all, writes up to twice what ran.
inline constexpr std::int64_t kMostNotedOfRun = 3;

/// What may be missing from the notes of one outing, or be too much in them, beside 5 %.
inline constexpr units::Hours kNoteTolerance{10};

}  // namespace wm::usage
