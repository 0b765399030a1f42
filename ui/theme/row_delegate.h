// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStyledItemDelegate>

class QAbstractItemView;

namespace wm::ui {

/// Paints the chosen row of any list, table or tree: ink at a tenth laid over it and an ink bar of 3 px at
/// its left. The bar is full ink while the list has the focus and pencil while it has not, so that focus
/// shows. The text keeps its own colour: a standing reads the same, chosen or not.
class RowDelegate : public QStyledItemDelegate {
    Q_OBJECT

  public:
    using QStyledItemDelegate::QStyledItemDelegate;

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

/// Makes a list, table or tree look as all of them do: a RowDelegate (owned by the view), whole rows chosen
/// one at a time, no grid, heads at the left in the page's own weight.
void dressRows(QAbstractItemView& view);

}  // namespace wm::ui
