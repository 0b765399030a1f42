// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <cstdint>
#include <memory>

#include "core/sheet/job_sheet.h"
#include "ui/print/paged_output.h"
#include "ui/print/sheet_painter.h"

class QPrintDialog;
class QPrinter;
class QWidget;

namespace wm::ui {

/// A printer set for a sheet: paper, margins, one side, black, named after it.
std::unique_ptr<QPrinter> sheetPrinter(const sheet::JobSheet& sheet, PaperSize size);

enum class PrintAnswer : std::uint8_t { Printed, LeftOff, Failed };

struct Printing {
    PrintAnswer answer = PrintAnswer::LeftOff;
    QString file{};  ///< where it went, if that was a file and no printer
};

/// Asks for the printer and prints. Printed: the sheet went out on paper, or into a file, for which `name` is
/// suggested.
Printing printSheet(const sheet::JobSheet& sheet, PaperSize size, const QString& name, QWidget* parent);
/// The same of anything that is laid out in pages, on A4: the card for the wall. The paper can be changed in
/// the dialog.
Printing printPages(const LayOut& layOut, const QString& title, QWidget* parent);

/// The field of a print dialog that asks for a file: `name`, in words, stands in it, and what is typed gets
/// its ending before the dialog looks whether that file is there.
void suggestFile(QPrintDialog& dialog, const QString& name);

}  // namespace wm::ui
