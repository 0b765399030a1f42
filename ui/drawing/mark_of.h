// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/ledger/book.h"
#include "ui/drawing/glyph.h"

namespace wm::ui {

/// The mark that a task's standing gets; put off adds the clock hand.
MarkState markOf(const ledger::DueLine& line);

}  // namespace wm::ui
