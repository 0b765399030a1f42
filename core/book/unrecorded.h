// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/book/book.h"

namespace wm::book {

/// True if nobody recorded the task, or nobody knows enough of what is behind it.
bool isUnknown(const DueLine& line);

/// The earliest day on which what a line counts can have been new, if the year of the machine is known.
std::optional<calendar::Date> oldestSince(const Book& book, const DueLine& line);

/// The tasks of a machine that are unknown, in the order in which they are to be looked at
/// (upkeep::rankUnknown); what comes with every ride or before each race stands last, it is looked at anyway.
/// Pointers are into the book.
std::vector<const DueLine*> unknownOf(const Book& book, MachineId machine);

/// The tasks that may be over by what somebody said of the time before the file, in the order of the list: a
/// closer word would narrow them.
std::vector<const DueLine*> narrowableOf(const Book& book, MachineId machine);

}  // namespace wm::book
