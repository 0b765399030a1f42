// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/verbs/verb.h"

namespace wm::verbs {

/// Of one day the mark on a joint that was entered last counts. A job that is put right brings its marks
/// again, as the last of their day: what was noted of those joints after it is entered again behind them, and
/// stays later. `before` is the picture without `change`; `because` strikes what is entered again.
void keepMarksInOrder(const picture::Ledger& before, const base::IdSource& newId,
                      const picture::Strike& because, picture::Change& change);

}  // namespace wm::verbs
