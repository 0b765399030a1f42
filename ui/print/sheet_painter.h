// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <cstdint>

#include "core/sheet/job_sheet.h"
#include "ui/print/sheet_layout.h"

class QPagedPaintDevice;

namespace wm::ui {

/// Which pages: from `first` to `last`, counted from 1; last 0 = to the end. The heads keep their count.
struct PaintOptions {
    int first = 1;
    int last = 0;
};

enum class PaintOutcome : std::uint8_t {
    Painted,
    PaperTooSmall,  ///< less than about A5 inside the margins
    NoSuchPages,    ///< the asked-for pages are not there
    DeviceRefused   ///< the printer or the file would not take a page
};

/// Paints the sheet on a printer, a preview or a PDF, one side, in black. Takes paper and margins from the
/// device.
PaintOutcome paintSheet(const sheet::JobSheet& sheet, QPagedPaintDevice& device, const PaintOptions& options);

/// How many pages the sheet takes on a paper with the usual margins.
int sheetPageCount(const sheet::JobSheet& sheet, PaperSize size);

/// "Job sheet 14, Heron 250": what the PDF and the print job are called.
QString sheetTitle(const sheet::JobSheet& sheet);

enum class PdfOutcome : std::uint8_t {
    Written,
    NoName,         ///< an empty path
    IsFolder,       ///< the path is a folder
    FolderMissing,  ///< the folder that should hold it is not there
    NotAllowed,     ///< the file can't be opened for writing there
    NotWritten      ///< opened, but not all of it arrived: no space left
};

struct PdfResult {
    PdfOutcome outcome = PdfOutcome::Written;
    QString path;
    QString detail;  ///< what the system said
    int pages = 0;
    [[nodiscard]] bool isWritten() const { return outcome == PdfOutcome::Written; }
};

/// Whether a PDF can be written there, before anything else is done for it: Written, or why not.
PdfResult pdfTarget(const QString& path);
/// Writes the sheet as a PDF, as writePagesPdf does; `like` is the garage's file.
PdfResult writeSheetPdf(const sheet::JobSheet& sheet, const QString& path, PaperSize size,
                        const QString& like = {});

}  // namespace wm::ui
