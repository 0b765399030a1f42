// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStyledItemDelegate>
#include <QTableView>

namespace wm::ui {

class BenchModel;

/// Paints a place of the Bench: mark, name, and how far at the right.
class BenchDelegate : public QStyledItemDelegate {
    Q_OBJECT

  public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
};

/// The table of the Bench. Arrows go from job to job, over empty places, and from machine to machine.
class BenchGrid : public QTableView {
    Q_OBJECT

  public:
    explicit BenchGrid(QWidget* parent = nullptr);
    void setBench(BenchModel* model);
    [[nodiscard]] int rowHeight() const;
    /// Columns as wide as the machines' heads above.
    void layOutColumns(int windowWidth);

  signals:
    void recordAsked(const QModelIndex& index);
    void pickAsked(const QModelIndex& index);
    void putOffAsked(const QModelIndex& index);

  protected:
    QModelIndex moveCursor(CursorAction action, Qt::KeyboardModifiers modifiers) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    [[nodiscard]] QModelIndex beside(const QModelIndex& from, int step) const;

    BenchModel* bench_ = nullptr;
};

}  // namespace wm::ui
