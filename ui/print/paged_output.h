// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <functional>
#include <optional>
#include <vector>

#include "ui/print/sheet_painter.h"

namespace wm::ui {

/// Lays something out, page by page, for a printable area in points; nothing if that is too small.
using LayOut = std::function<std::optional<std::vector<SheetPage>>(QSizeF area)>;

/// Paints it on a printer, a preview or a PDF, one side, in black. Takes paper and margins from the device.
PaintOutcome paintPages(const LayOut& layOut, QPagedPaintDevice& device, const PaintOptions& options);

/// How many pages it takes on a paper with the usual margins; 0 if it doesn't fit.
int pageCount(const LayOut& layOut, PaperSize size);

/// Writes it as a PDF. What stood at `path` stays as it was unless the whole of the new one arrived. A new
/// file gets the rights of `like`: whoever may not read a garage may not read its paper.
PdfResult writePagesPdf(const LayOut& layOut, const QString& title, const QString& path, PaperSize size,
                        const QString& like = {});

}  // namespace wm::ui
