// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/theme/row_delegate.h"

namespace wm::ui {

/// Cells of a RowTable: figures in the face with unmistakable digits, secondary words in pencil, the wedge
/// behind a figure that nobody has confirmed.
class CellDelegate : public RowDelegate {
    Q_OBJECT

  public:
    using RowDelegate::RowDelegate;

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

  protected:
    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override;
};

}  // namespace wm::ui
