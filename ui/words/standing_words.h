// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/book/book.h"
#include "ui/words/why.h"

namespace wm::ui {

/// How far a task is, in a few words: "2.1 h left", "over 3 washes", "washed 2 May", "no record".
QString howFar(const book::DueLine& line, calendar::Date today);
/// The same for one limit of it.
QString howFar(const upkeep::LimitState& limit, calendar::Date today);

/// "60 %", "under 1 %": 0 and 100 are said of what is certain alone.
QString chanceWords(double chance);

/// What would narrow a line that may be over: "What did the meter show on Sat 2 May?"; else empty.
QString narrowingWords(const book::DueLine& line, calendar::Date today);

/// The word for a standing alone: "overdue", "before Birch Hollow", "in hand", "no record".
QString standingWords(const book::DueLine& line);

/// Why a task stands as it does: the derivation of its figure, when it falls due, class, source.
Why whyOf(const book::Book& book, const book::DueLine& line);

}  // namespace wm::ui
