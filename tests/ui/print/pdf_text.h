// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QSizeF>
#include <QString>
#include <QStringList>

namespace wm::ui {

/// What another program (poppler) reads in a PDF.
struct PdfSeen {
    int pages = 0;
    QString title;
    QSizeF paper;  ///< of the first page, in points
};
PdfSeen pdfInfo(const QString& path);
/// The lines of one page as they stand side by side.
QStringList pdfLines(const QString& path, int page);

}  // namespace wm::ui
