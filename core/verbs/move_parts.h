// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/phrase.h"
#include "core/book/book_checks.h"
#include "core/verbs/verb.h"

namespace wm::verbs {

// What the verbs that move something have in common.

/// All that is wrong with a move by itself; its fit with the other moves is Fittings::check. Says how it was
/// told. `item` is the item's card, known or new, or nullptr.
void checkMove(book::BookChecks& check, const book::Book& book, items::Move& move, const items::Item* item);
/// WrongKind if the position does not take such an item.
void checkKind(book::BookChecks& check, const items::Move& move, const items::Item& item);
base::Phrase moveText(const picture::Ledger& ledger, const items::Move& move, const std::string& item);

}  // namespace wm::verbs
