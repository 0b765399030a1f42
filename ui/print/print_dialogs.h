// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <memory>

#include "core/sheet/job_sheet.h"
#include "ui/print/paged_output.h"
#include "ui/print/sheet_painter.h"

class QPrinter;
class QWidget;

namespace wm::ui {

/// A printer set for a sheet: paper, margins, one side, black, named after it.
std::unique_ptr<QPrinter> sheetPrinter(const sheet::JobSheet& sheet, PaperSize size);

enum class PrintAnswer : std::uint8_t { Printed, LeftOff, Failed };

/// Asks for the printer and prints. Printed: the sheet went out on paper.
PrintAnswer printSheet(const sheet::JobSheet& sheet, PaperSize size, QWidget* parent);
/// The same of anything that is laid out in pages, on A4: the card for the wall. The paper can be changed in
/// the dialog.
PrintAnswer printPages(const LayOut& layOut, const QString& title, QWidget* parent);

}  // namespace wm::ui
