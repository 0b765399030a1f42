// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/calendar/date.h"
#include "core/fastening/rows.h"
#include "core/sheet/speech.h"
#include "core/units/quantity.h"
#include "core/upkeep/task.h"
#include "core/usage/exposure.h"

namespace wm::sheet {

/// "2 May 2026"
std::string dateText(calendar::Date date, const Speech& speech = {});
/// "Sat 16 May 2026"
std::string dayText(calendar::Date date, const Speech& speech = {});
/// "2", "850 ml", "25 g"
std::string amountText(std::int64_t amount, upkeep::Unit unit);
/// "61.3 h"
std::string hoursWithUnit(units::Hours hours, char mark);
/// "61.3 h", "60 to 80 h, likely 65 h", "at least 60 h, likely 65 h"
std::string bracketText(const usage::HoursBracket& hours, const Speech& speech);
/// "110 N·m", "20 to 25 N·m", empty if no value was typed
std::string torqueText(const fastening::JointVersion& joint, const Speech& speech);
/// "0.10 to 0.15 mm", "at least 1.0 mm", "at most 0.80 mm", or empty
std::string limitText(const upkeep::MeasurePoint& point, const Speech& speech);
/// "criss-cross, from the middle out", with the note that was typed; empty if any order will do
std::string orderText(const fastening::JointVersion& joint, const Speech& speech = {});
/// "new each time: cotter", "new cotter each time" as it was typed; empty if nothing is renewed
std::string renewText(std::string_view renew, const Speech& speech = {});
/// "before it is ridden", "after the next outing", "after 2.0 h", "after 7 days"
std::string whenText(const upkeep::FollowUpRule& rule, const Speech& speech);
/// Source and page in one: "service manual p. 2-31"
std::string sourceText(const std::string& source, const std::string& page, const Speech& speech = {});

/// The same in N·m with no more digits than the source has; empty if it was typed in N·m.
std::string inNewtonMetresText(const fastening::JointVersion& joint, const Speech& speech);

}  // namespace wm::sheet
