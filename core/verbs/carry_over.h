// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <vector>

#include "core/verbs/verb.h"

namespace wm::verbs {

/// Rows that name a fact which was put right name the one in its place: the end of a snag, the answer to a
/// follow-up, a job that a snag asked for and all that came with it. Facts are struck and entered again,
/// other rows are written again. A job sheet stays as it was printed.
/// `ledger` holds the new fact and no longer the old one.
std::vector<picture::Row> carryOver(const picture::Ledger& ledger, const base::IdSource& newId,
                                    std::int64_t oldFact, std::int64_t newFact,
                                    const picture::Strike& because);

}  // namespace wm::verbs
