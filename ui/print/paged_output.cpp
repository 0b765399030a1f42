// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/paged_output.h"

#include <QBuffer>
#include <QDir>
#include <QFileInfo>
#include <QPageLayout>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QPdfWriter>
#include <algorithm>

#include "ui/print/sheet_type.h"
#include "ui/workbench/write_bytes.h"

namespace wm::ui {

namespace {

constexpr int kPdfResolution = 1200;

QMarginsF margins() {
    return {kPaperMarginMm, kPaperMarginMm, kPaperMarginMm, kPaperMarginMm};
}

QPageSize::PageSizeId qtSize(PaperSize size) {
    return size == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter;
}

// Where the pages go on the device, in points from the painter's own origin.
QRectF areaOf(const QPagedPaintDevice& device) {
    const QPageLayout layout = device.pageLayout();
    if (layout.mode() == QPageLayout::FullPageMode) {
        const double margin = kPaperMarginMm * kPointsPerMm;
        return layout.fullRect(QPageLayout::Point).adjusted(margin, margin, -margin, -margin);
    }
    return {QPointF(0, 0), layout.paintRect(QPageLayout::Point).size()};
}

PdfOutcome checkPath(const QString& path) {
    const QFileInfo target(path);
    if (path.trimmed().isEmpty())
        return PdfOutcome::NoName;
    if (target.isDir())
        return PdfOutcome::IsFolder;
    if (!target.dir().exists())
        return PdfOutcome::FolderMissing;
    return PdfOutcome::Written;
}

PdfOutcome outcomeOf(WriteResult::Outcome outcome) {
    switch (outcome) {
        case WriteResult::Outcome::Written:
            return PdfOutcome::Written;
        case WriteResult::Outcome::NotAllowed:
            return PdfOutcome::NotAllowed;
        case WriteResult::Outcome::NotWritten:
            break;
    }
    return PdfOutcome::NotWritten;
}

// The whole PDF in memory, so that a disk that fills up is noticed when it is written, all at once.
QByteArray pdfOf(const LayOut& layOut, const QString& title, PaperSize size) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setResolution(kPdfResolution);
    writer.setTitle(title);
    writer.setCreator(QStringLiteral("Witnessmark"));
    writer.setPageLayout(
        QPageLayout(QPageSize(qtSize(size)), QPageLayout::Portrait, margins(), QPageLayout::Millimeter));
    return paintPages(layOut, writer, {}) == PaintOutcome::Painted ? bytes : QByteArray();
}

}  // namespace

PaintOutcome paintPages(const LayOut& layOut, QPagedPaintDevice& device, const PaintOptions& options) {
    const QRectF area = areaOf(device);
    const auto pages = layOut(area.size());
    if (!pages)
        return PaintOutcome::PaperTooSmall;
    const int count = static_cast<int>(pages->size());
    const int last = options.last == 0 ? count : std::min(options.last, count);
    if (options.first < 1 || options.first > last)
        return PaintOutcome::NoSuchPages;
    QPainter painter;
    if (!painter.begin(&device))
        return PaintOutcome::DeviceRefused;
    for (int page = options.first; page <= last; ++page) {
        if (page > options.first && !device.newPage())
            return PaintOutcome::DeviceRefused;
        painter.save();
        painter.scale(device.logicalDpiX() / 72.0, device.logicalDpiY() / 72.0);
        painter.translate(area.topLeft());
        paintMarks(painter, (*pages)[static_cast<std::size_t>(page - 1)].marks);
        painter.restore();
    }
    return painter.end() ? PaintOutcome::Painted : PaintOutcome::DeviceRefused;
}

int pageCount(const LayOut& layOut, PaperSize size) {
    const auto area = printableMm(size, kPaperMarginMm);
    const auto pages = area ? layOut(*area * kPointsPerMm) : std::nullopt;
    return pages ? static_cast<int>(pages->size()) : 0;
}

PdfResult pdfTarget(const QString& path) {
    PdfResult result;
    result.path = path;
    result.outcome = checkPath(path);
    if (!result.isWritten())
        return result;
    if (auto why = whyItStays(path)) {
        result.outcome = PdfOutcome::NotAllowed;
        result.detail = std::move(*why);
    }
    return result;
}

PdfResult writePagesPdf(const LayOut& layOut, const QString& title, const QString& path, PaperSize size,
                        const QString& like) {
    PdfResult result = pdfTarget(path);
    if (!result.isWritten())
        return result;
    const QByteArray pdf = pdfOf(layOut, title, size);
    if (pdf.isEmpty()) {
        result.outcome = PdfOutcome::NotWritten;
        return result;
    }
    const WriteResult written = writeBytes(path, pdf, like);
    result.outcome = outcomeOf(written.outcome);
    result.detail = written.detail;
    result.pages = result.isWritten() ? pageCount(layOut, size) : 0;
    return result;
}

}  // namespace wm::ui
