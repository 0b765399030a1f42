// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/book/book.h"
#include "ui/drawing/place_picture.h"

namespace wm::ui {

/// Of one machine: a line for each place, with what sat there. Of all machines: a line for each item that has
/// been in more than one place, with where it sat. A year back at the most.
Places placesOf(const book::Book& book, std::optional<MachineId> machine);

}  // namespace wm::ui
