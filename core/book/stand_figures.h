// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/book/book.h"
#include "core/fastening/figure.h"

namespace wm::book {

/// Everything that is looked up at the stand, of one machine or of all that are here on the book's day: each
/// joint, what each job takes of each fluid and part, each limit of a measurement, and each setting as it was
/// last noted. What nobody has typed yet is there too, without a figure: that it is missing is an answer.
std::vector<fastening::Figure> figuresOf(const Book& book, std::optional<MachineId> machine);

}  // namespace wm::book
