// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/book/book.h"

namespace wm::book {

/// True for a task that is done with every outing or two, or before each race, and is due for that alone. One
/// whose own interval has run out as well is a job: a battery that is looked at before each race, and should
/// have been charged ten hours ago.
bool isOnlyOfTheRound(const DueLine& line);

}  // namespace wm::book
