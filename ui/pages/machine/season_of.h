// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/book/book.h"
#include "ui/drawing/season.h"

namespace wm::ui {

/// The weeks ahead of one machine, bars by what they are about; or of all machines, a row each.
Season seasonOf(const book::Book& book, std::optional<MachineId> machine);

}  // namespace wm::ui
