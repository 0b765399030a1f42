// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "core/calendar/date.h"
#include "core/fastening/hand_tight.h"
#include "core/fastening/rows.h"
#include "core/fastening/tool_rows.h"

namespace wm::fastening {

/// A joint that was tightened with a tool which then proved to be out of tolerance.
struct RecallLine {
    const JointMark* tightened = nullptr;  ///< the last time with this tool before the check
    std::size_t times = 0;                 ///< how often in the period
    const JointMark* since = nullptr;  ///< loosened or tightened again since: needs no re-check; or nullptr
};

/// What one failed check puts in doubt: everything confirmed since the last check that left the tool good,
/// and what was confirmed with it afterwards all the same, until it is checked again.
struct Recall {
    const Calibration* failed = nullptr;
    const Calibration* lastGood =
        nullptr;                      ///< nothing: never checked before, so everything it ever tightened
    std::vector<RecallLine> lines{};  ///< one a joint, newest first
};

/// The recalls of one tool up to a day, newest first. Marks of the day of a check come before it if they were
/// entered before it.
std::vector<Recall> recallsOf(ToolId tool, std::span<const Calibration> calibrations,
                              std::span<const JointMark> marks, calendar::Date on);

/// The failed check that puts a tightening in doubt: the next one of its tool says whether the tool was
/// right; while there is none, the last one before it, as it left the tool. Checks are of the evening, in
/// their order of entry. Or nullptr.
const Calibration* doubtedBy(const Touch& tightened, std::span<const Calibration> calibrations,
                             calendar::Date on);

/// Does a tightening say that the joint is right, whatever was done to it before? With a tool that had passed
/// its last check by then, and did not fail the next.
bool isVouched(const Touch& tightened, std::span<const Calibration> calibrations, calendar::Date on);

/// The mark of a joint that last said it was tight, up to a day: when, by whom and with what. Or nullptr.
const JointMark* lastTightened(std::span<const JointMark> marks, JointId joint, calendar::Date on);

}  // namespace wm::fastening
