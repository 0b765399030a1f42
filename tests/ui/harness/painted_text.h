// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QModelIndex>
#include <QRectF>
#include <QString>
#include <vector>

class QWidget;

namespace wm::ui {

/// A line of text as it comes to the screen: what is left of it after eliding, and where it may be seen.
struct PaintedText {
    QWidget* by = nullptr;  ///< who painted it; of a list, table or tree the view and not its viewport
    QString text{};
    QRectF place{};       ///< in the painting widget
    QRectF ink{};         ///< what of it carries ink
    QRectF clip{};        ///< beyond this nothing is seen
    QModelIndex index{};  ///< the cell under it, if a list, table or tree painted it
};

/// Everything that `root` and its visible children paint as text, whoever draws it and however: a paint
/// engine that takes texts down. Paper in a preview is left out.
std::vector<PaintedText> paintedTexts(QWidget* root);

/// Shortened with an ellipsis that nobody wrote.
bool isElided(const PaintedText& painted);
/// Runs over the edge of where it may be seen; not by rolling, which is no loss.
bool isClipped(const PaintedText& painted);

}  // namespace wm::ui
