// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QSizeF>
#include <optional>
#include <vector>

#include "core/sheet/job_sheet.h"
#include "ui/print/sheet_marks.h"

namespace wm::ui {

enum class PaperSize : std::uint8_t { A4, Letter };

inline constexpr double kPaperMarginMm = 12.0;

/// The whole sheet of paper, upright, in millimetres (ISO 216; 8.5 x 11 in).
QSizeF paperSizeMm(PaperSize size);
/// What is left of it inside equal margins, or nothing if they eat the page.
std::optional<QSizeF> printableMm(PaperSize size, double marginMm);

struct SheetPage {
    std::vector<Mark> marks;
};

/// The least printable area, in points, on which a sheet can be laid out: about A5.
inline constexpr QSizeF kLeastArea{320.0, 420.0};

/// The sheet, page by page, for a printable area in points. A new page begins where a stage would be cut and
/// fits a page of its own; a step stays with its boxes unless it is longer than a page. Every page has its
/// head and foot. Nothing if the area is smaller than kLeastArea.
std::optional<std::vector<SheetPage>> layOutSheet(const sheet::JobSheet& sheet, QSizeF area);

/// Does a figure on the page bear the wedge of what is not confirmed?
bool hasWedge(const SheetPage& page);

}  // namespace wm::ui
