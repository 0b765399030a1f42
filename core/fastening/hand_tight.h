// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <span>
#include <vector>

#include "core/calendar/date.h"
#include "core/fastening/rows.h"

namespace wm::fastening {

/// Opened: undone or put together by hand, by a job or with something that was taken off or put on. Loosened:
/// found moved, its mark found broken, or undone by itself. Tightened: torqued and checked.
enum class Touching : std::uint8_t { Opened, Loosened, Tightened };

/// Something that was done to a joint, or found at it, that matters to whether it is tight.
struct Touch {
    JointId joint{};
    std::optional<JointId> toldOf{};  ///< the one of the machine on which it was done, if that is another
    calendar::Moment when{};
    base::Entered entered = 0;
    Touching how = Touching::Opened;
    MarkKind why = MarkKind::Loosened;
    std::optional<RecordId> record{};
    std::optional<ToolId> tool{};  ///< that it was tightened with
    bool isAnew = false;           ///< tightened by a job that had undone it
};

/// Is the one before the other? By day, by part of the day, as they were entered.
bool comesBefore(const Touch& a, const Touch& b);

/// How a joint stands after all that was done to it.
struct JointNow {
    bool isLoose = false;
    Touch since{};                     ///< of a loose one: what loosened it first
    Touch last{};                      ///< what loosened or tightened it last
    std::optional<Touch> tightened{};  ///< the last time
    std::vector<Touch> tightenings{};  ///< since it was last loosened, oldest first
};

/// The joints that were ever touched. Touches in any order; of one moment they count as they were entered,
/// and as they stand here if that is the same. A joint that was opened and tightened on one day is not opened
/// again by a further opening of that day, unless it was ridden in between: tyre and bearings were one
/// opening. `rodeOn` says of a day whether the machine was ridden on it; riding comes before what has no part
/// of the day.
std::map<JointId, JointNow> jointsNow(std::vector<Touch> touches,
                                      const std::function<bool(calendar::Date)>& rodeOn);

/// A joint that was loosened (or found moved) and not tightened since.
struct HandTight {
    JointId joint{};
    calendar::Date since{};
    calendar::DayPart part = calendar::DayPart::AfterRiding;
    base::Entered entered = 0;  ///< of what loosened it
    MarkKind why = MarkKind::Loosened;
    std::optional<RecordId> record{};
};

/// The loose ones of these, oldest first.
std::vector<HandTight> handTight(const std::map<JointId, JointNow>& joints);

}  // namespace wm::fastening
