// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/book/due_change.h"

namespace wm::ui {

/// "Fork oil: in hand → before Ridge Cross; 2.1 h left → over 0.4 h"; never empty behind the colon.
QString dueMoveWords(const book::DueMove& move, calendar::Date today);

/// A line for each move, at most `most` and then how many more; "Changes nothing in today's list." if there
/// are none.
QString dueChangeWords(const std::vector<book::DueMove>& moves, calendar::Date today, std::size_t most);

}  // namespace wm::ui
