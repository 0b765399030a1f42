// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "ui/print/sheet_painter.h"

namespace wm::ui {

/// What the mechanic reads when a job sheet did not become a PDF; empty if it did.
QString wordsFor(const PdfResult& result);

}  // namespace wm::ui
