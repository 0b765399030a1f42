// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/verbs/verb.h"

namespace wm::verbs {

// What turned out wrong, and a whole file at once.

/// Takes a fact back; it stays readable. What a record or outing brought in the same go (stock moves, joint
/// marks, reading, wash, end of a snag, answers) is struck with it. ReasonNeeded; Unknown if there is no such
/// fact (definitions and cards are changed, not struck); AlreadyStruck; for a move what checkMoves says if
/// the later moves cannot have happened without it.
base::Result<picture::Change> strike(const VerbContext& context, std::int64_t fact, std::string reason);
/// Strike and re-entry in one. `again` is the verb that enters it anew; it is checked on a book in which the
/// fact is already struck, so that a wrong reading does not stand in the way of the right one. What named the
/// old fact names the new one: a snag that was dealt with stays so, an answered follow-up stays answered.
base::Result<picture::Change> correct(const VerbContext& context, std::int64_t fact, std::string reason,
                                      const Verb& again);

/// A whole file's rows, as the exchange text brought them, ids and order of entry kept: every reference must
/// be there, every bound hold. Only for a file that holds nothing but its own card (garage): else NotEmpty.
/// A garage row among `rows` replaces that card.
base::Result<picture::Change> adoptAll(const VerbContext& context, std::vector<picture::Row> rows);

}  // namespace wm::verbs
