// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/print_dialogs.h"

#include <QDir>
#include <QLineEdit>
#include <QPageLayout>
#include <QPrintDialog>
#include <QPrinter>
#include <QStandardPaths>
#include <algorithm>
#include <functional>

#include "ui/workbench/file_names.h"

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

Printing askAndPrint(QPrinter& printer, int pages, const QString& name, QWidget* parent, const Paint& paint) {
    QPrintDialog dialog(&printer, parent);
    dialog.setWindowTitle(printer.docName());
    dialog.setOption(QAbstractPrintDialog::PrintPageRange);
    dialog.setMinMax(1, std::max(1, pages));
    suggestFile(dialog, name);
    if (dialog.exec() != QDialog::Accepted)
        return {};
    const PaintOptions options{std::max(1, printer.fromPage()), printer.toPage()};
    if (paint(printer, options) != PaintOutcome::Painted)
        return {PrintAnswer::Failed};
    return {PrintAnswer::Printed, printer.outputFileName()};
}

}  // namespace

void suggestFile(QPrintDialog& dialog, const QString& name) {
    auto* field = dialog.findChild<QLineEdit*>(QStringLiteral("filename"));
    if (field == nullptr)
        return;
    const QDir folder(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
    field->setText(
        (folder.exists() ? folder : QDir::home()).filePath(asFileName(name) + QStringLiteral(".pdf")));
    QObject::connect(field, &QLineEdit::editingFinished, field, [field] {
        if (!field->text().isEmpty())
            field->setText(withEnding(field->text(), QStringLiteral(".pdf")));
    });
}

std::unique_ptr<QPrinter> sheetPrinter(const sheet::JobSheet& sheet, PaperSize size) {
    return printerFor(sheetTitle(sheet), size);
}

Printing printSheet(const sheet::JobSheet& sheet, PaperSize size, const QString& name, QWidget* parent) {
    const auto printer = sheetPrinter(sheet, size);
    return askAndPrint(
        *printer, sheetPageCount(sheet, size), name, parent,
        [&](QPrinter& device, const PaintOptions& options) { return paintSheet(sheet, device, options); });
}

Printing printPages(const LayOut& layOut, const QString& title, QWidget* parent) {
    const auto printer = printerFor(title, PaperSize::A4);
    return askAndPrint(
        *printer, pageCount(layOut, PaperSize::A4), title, parent,
        [&](QPrinter& device, const PaintOptions& options) { return paintPages(layOut, device, options); });
}

}  // namespace wm::ui
