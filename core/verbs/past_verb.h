// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/verbs/verb.h"

namespace wm::verbs {

/// What a used machine, and items that came with it, have behind them today, all told: brackets, and what
/// they rest on, which is added to their notes.
struct PastDraft {
    MachineId machine{};
    std::optional<usage::HoursBracket> hours{};  ///< of the machine; nothing: only items are stated
    std::string why{};
    struct Part {
        ItemId item{};
        usage::HoursBracket hours{};
        std::string why{};
    };
    std::vector<Part> parts{};
};

/// What something had behind it before its first day here, if it has `today` behind it by now and `here` of
/// that was ridden since. 80 to 120 h today, likely 100, of them 5 h here: 75 to 115, likely 95.
usage::HoursBracket pastOf(const usage::HoursBracket& today, const usage::HoursBracket& here);

/// The verb: what was ridden here is taken off, and the rest stands on the cards as their past. Negative,
/// OutOfOrder (a bracket), Unknown, Duplicate (an item twice), NothingToDo (nothing is stated, or it stands
/// so already, with this reason); of an item at "parts[0].past_best".
base::Result<picture::Change> statePast(const VerbContext& context, PastDraft draft);

}  // namespace wm::verbs
