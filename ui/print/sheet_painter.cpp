// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/sheet_painter.h"

#include "ui/print/paged_output.h"
#include "ui/print/sheet_sections.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

LayOut pagesOf(const sheet::JobSheet& sheet) {
    return [&sheet](QSizeF area) { return layOutSheet(sheet, area); };
}

}  // namespace

PaintOutcome paintSheet(const sheet::JobSheet& sheet, QPagedPaintDevice& device,
                        const PaintOptions& options) {
    return paintPages(pagesOf(sheet), device, options);
}

int sheetPageCount(const sheet::JobSheet& sheet, PaperSize size) {
    return pageCount(pagesOf(sheet), size);
}

QString sheetTitle(const sheet::JobSheet& sheet) {
    const QString machine = fromCore(sheet.machine);
    return sheet.number == 0 ? tr("Job sheet (proof), %1").arg(machine)
                             : tr("Job sheet %1, %2").arg(sheet.number).arg(machine);
}

PdfResult writeSheetPdf(const sheet::JobSheet& sheet, const QString& path, PaperSize size,
                        const QString& like) {
    return writePagesPdf(pagesOf(sheet), sheetTitle(sheet), path, size, like);
}

}  // namespace wm::ui
