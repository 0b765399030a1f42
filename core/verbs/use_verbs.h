// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/verbs/verb.h"

namespace wm::verbs {

/// An outing may bring its meter reading and its wash: one verb, one line for undo.
struct OutingDraft {
    usage::Outing outing{};
    std::optional<units::Hours> meterAfter{};
    bool washed = false;
    bool pressureWashed = false;
    bool crashed = false;
    bool handTightSeen = false;  ///< the mechanic has answered the hand-tight list: ridden so, he knows
    bool meterIsRight = false;   ///< he has answered whether the meter has stopped: it has not
};
/// MustAnswer if joints of the machine are hand-tight and that was not answered; the answer is noted on each
/// of them as a mark RiddenOpen, by the rider; MeterStood "noted" if with it far more is noted than the meter
/// ran (usage::whereItStood; given is what was noted, wanted what ran); TooLarge for more than 24 h a day.
base::Result<picture::Change> logOuting(const VerbContext& context, OutingDraft draft);

/// What was answered about a reading.
struct ReadingSeen {
    bool openJoints = false;    ///< it is known that they were open: noted on them as with an outing
    bool meterIsRight = false;  ///< it has not stopped
};
/// MustAnswer "hand_tight" if the meter ran on by more than was noted while joints were open; MeterStood as
/// for an outing.
base::Result<picture::Change> logReading(const VerbContext& context, usage::HourReading reading);
base::Result<picture::Change> logReadingSeen(const VerbContext& context, usage::HourReading reading,
                                             ReadingSeen seen);
base::Result<picture::Change> logDistance(const VerbContext& context, usage::DistanceReading reading);
base::Result<picture::Change> logWash(const VerbContext& context, usage::Wash wash);
base::Result<picture::Change> logCrash(const VerbContext& context, usage::Crash crash);

}  // namespace wm::verbs
