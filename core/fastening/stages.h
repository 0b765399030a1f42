// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/fastening/rows.h"
#include "core/units/decimal.h"

namespace wm::fastening {

/// Snug: down by hand. Part: half, as manuals say it. Torque: to a figure. Full: to the joint's own figure.
/// Loosen: backed off again. Angle: turned further by so many degrees. Settle: a steering head turned from
/// lock to lock between two torques.
enum class StageKind : std::uint8_t { Snug, Half, Torque, Full, Loosen, Angle, Settle };

/// One stage of tightening; a torque is in the unit of the joint.
struct Stage {
    StageKind kind = StageKind::Torque;
    units::Decimal torque{};
    std::int64_t degrees = 0;  ///< of Angle; of Loosen, if the manual says how far

    friend bool operator==(const Stage&, const Stage&) = default;
};

/// Reads stages as they are printed, parted by "," or ";" (a comma between two digits is a decimal comma),
/// with "+" between a torque and the angle after it: "snug, 20, 38", "seat 40, loosen, 9", "30 + 90 deg",
/// "snug; 4,5; 9", "half, full", "20, loosen 1/4 turn, 12", "25, lock to lock five times, loosen, 7". An
/// empty text has no stages. Errors in "stages": Malformed (`given` the part that can't be read), NotPositive
/// (a torque or angle of 0), TooLarge (more than two turns at once), OutOfOrder (less than the stage before
/// without loosening between; `wanted` that stage), Inconsistent (an angle with no torque before it, or
/// loosened at the end).
base::Result<std::vector<Stage>> parseStages(std::string_view text);

/// The stages of a joint whose torque was put right: where one of them is the torque that stood there, it
/// becomes the new one. Stages that were typed anew, that name no torque or never held the joint's own stay.
/// Inconsistent "stages" (`given` the stages) where it is not plain what becomes of them: the torque stands
/// twice, a range takes the place of one figure, or the unit is another and so are the other stages.
base::Result<std::string> stagesAfter(const JointVersion& stood, const JointVersion& read);

/// The stages in words, one a line on the card: "snug", "to 20", "loosen", "90° further".
std::string stageText(const Stage& stage, char mark = '.');

}  // namespace wm::fastening
