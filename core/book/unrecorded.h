// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/book/book.h"

namespace wm::book {

/// The tasks of a machine that nobody has recorded, in the order in which they are to be looked at
/// (upkeep::rankUnknown); what comes with every ride or before each race stands last, it is looked at anyway.
/// Pointers are into the book.
std::vector<const DueLine*> unknownOf(const Book& book, MachineId machine);

}  // namespace wm::book
