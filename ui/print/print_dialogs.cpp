// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/print_dialogs.h"

#include <QPageLayout>
#include <QPrintDialog>
#include <QPrinter>
#include <algorithm>
#include <functional>

namespace wm::ui {

namespace {

std::unique_ptr<QPrinter> printerFor(const QString& title, PaperSize size) {
    auto printer = std::make_unique<QPrinter>(QPrinter::HighResolution);
    printer->setDocName(title);
    printer->setCreator(QStringLiteral("Witnessmark"));
    printer->setDuplex(QPrinter::DuplexNone);
    printer->setColorMode(QPrinter::GrayScale);
    const auto id = size == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter;
    const QMarginsF margins(kPaperMarginMm, kPaperMarginMm, kPaperMarginMm, kPaperMarginMm);
    printer->setPageLayout(
        QPageLayout(QPageSize(id), QPageLayout::Portrait, margins, QPageLayout::Millimeter));
    return printer;
}

using Paint = std::function<PaintOutcome(QPrinter& printer, const PaintOptions& options)>;

PrintAnswer askAndPrint(QPrinter& printer, int pages, QWidget* parent, const Paint& paint) {
    QPrintDialog dialog(&printer, parent);
    dialog.setWindowTitle(printer.docName());
    dialog.setOption(QAbstractPrintDialog::PrintPageRange);
    dialog.setMinMax(1, std::max(1, pages));
    if (dialog.exec() != QDialog::Accepted)
        return PrintAnswer::LeftOff;
    const PaintOptions options{std::max(1, printer.fromPage()), printer.toPage()};
    return paint(printer, options) == PaintOutcome::Painted ? PrintAnswer::Printed : PrintAnswer::Failed;
}

}  // namespace

std::unique_ptr<QPrinter> sheetPrinter(const sheet::JobSheet& sheet, PaperSize size) {
    return printerFor(sheetTitle(sheet), size);
}

PrintAnswer printSheet(const sheet::JobSheet& sheet, PaperSize size, QWidget* parent) {
    const auto printer = sheetPrinter(sheet, size);
    return askAndPrint(
        *printer, sheetPageCount(sheet, size), parent,
        [&](QPrinter& device, const PaintOptions& options) { return paintSheet(sheet, device, options); });
}

PrintAnswer printPages(const LayOut& layOut, const QString& title, QWidget* parent) {
    const auto printer = printerFor(title, PaperSize::A4);
    return askAndPrint(
        *printer, pageCount(layOut, PaperSize::A4), parent,
        [&](QPrinter& device, const PaintOptions& options) { return paintPages(layOut, device, options); });
}

}  // namespace wm::ui
