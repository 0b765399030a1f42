// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/print_dialogs.h"

#include <QPageLayout>
#include <QPrintDialog>
#include <QPrintPreviewDialog>
#include <QPrinter>

namespace wm::ui {

std::unique_ptr<QPrinter> sheetPrinter(const sheet::JobSheet& sheet, PaperSize size) {
    auto printer = std::make_unique<QPrinter>(QPrinter::HighResolution);
    printer->setDocName(sheetTitle(sheet));
    printer->setCreator(QStringLiteral("Witnessmark"));
    printer->setDuplex(QPrinter::DuplexNone);
    printer->setColorMode(QPrinter::GrayScale);
    const auto id = size == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter;
    const QMarginsF margins(kPaperMarginMm, kPaperMarginMm, kPaperMarginMm, kPaperMarginMm);
    printer->setPageLayout(
        QPageLayout(QPageSize(id), QPageLayout::Portrait, margins, QPageLayout::Millimeter));
    return printer;
}

std::unique_ptr<QPrintPreviewDialog> sheetPreview(const sheet::JobSheet& sheet, QPrinter& printer,
                                                  QWidget* parent) {
    auto dialog = std::make_unique<QPrintPreviewDialog>(&printer, parent);
    dialog->setWindowTitle(sheetTitle(sheet));
    QObject::connect(dialog.get(), &QPrintPreviewDialog::paintRequested, dialog.get(),
                     [&sheet](QPrinter* device) { paintSheet(sheet, *device, {}); });
    return dialog;
}

PrintAnswer previewAndPrint(const sheet::JobSheet& sheet, PaperSize size, QWidget* parent) {
    const auto printer = sheetPrinter(sheet, size);
    return sheetPreview(sheet, *printer, parent)->exec() == QDialog::Accepted ? PrintAnswer::Printed
                                                                              : PrintAnswer::LeftOff;
}

PrintAnswer printSheet(const sheet::JobSheet& sheet, PaperSize size, QWidget* parent) {
    const auto printer = sheetPrinter(sheet, size);
    QPrintDialog dialog(printer.get(), parent);
    dialog.setWindowTitle(sheetTitle(sheet));
    dialog.setOption(QAbstractPrintDialog::PrintPageRange);
    dialog.setMinMax(1, std::max(1, sheetPageCount(sheet, size)));
    if (dialog.exec() != QDialog::Accepted)
        return PrintAnswer::LeftOff;
    const PaintOptions pages{std::max(1, printer->fromPage()), printer->toPage()};
    return paintSheet(sheet, *printer, pages) == PaintOutcome::Painted ? PrintAnswer::Printed
                                                                       : PrintAnswer::Failed;
}

}  // namespace wm::ui
