// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/verbs/verb.h"

namespace wm::verbs {

// Where the items go. A move that was told as work is stored as one that nobody asked about if its machine
// was ridden since: what held it then can't be said by this.

/// Errors of Fittings::check, and WrongKind if the position does not take such an item.
base::Result<picture::Change> moveItem(const VerbContext& context, items::Move move);

struct FitDraft {
    items::Move move{};  ///< Fitted
    std::optional<items::MoveKind>
        oldGoesTo{};             ///< what sits at the position comes off first, and goes there
    bool fromElsewhere = false;  ///< if it is fitted elsewhere, it comes off there first
};
/// One verb, up to three moves.
base::Result<picture::Change> fitItem(const VerbContext& context, FitDraft draft);
/// Takes off what sits at the position and fits `move.item` there.
base::Result<picture::Change> swapItem(const VerbContext& context, items::Move move,
                                       items::MoveKind oldGoesTo);
/// Several items at once, one after the other: both wheels of a set. The errors are those of the first that
/// can't be fitted, named under "moves[1].".
base::Result<picture::Change> fitSet(const VerbContext& context, std::vector<FitDraft> drafts);

}  // namespace wm::verbs
