// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/book/book.h"
#include "ui/drawing/glyph.h"

namespace wm::ui {

/// The mark that a task's standing gets; put off adds the clock hand.
MarkState markOf(const book::DueLine& line);

}  // namespace wm::ui
