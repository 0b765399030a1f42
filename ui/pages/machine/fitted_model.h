// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractItemModel>
#include <QStyledItemDelegate>
#include <memory>

#include "ui/pages/machine/fitted.h"

namespace wm::ui {

/// What is fitted, as an outline.
class FittedModel : public QAbstractItemModel {
    Q_OBJECT

  public:
    explicit FittedModel(QObject* parent = nullptr);
    void show(std::unique_ptr<FittedNode> root);

    [[nodiscard]] const FittedNode* node(const QModelIndex& index) const;
    [[nodiscard]] QModelIndex find(ItemId item) const;

    [[nodiscard]] QModelIndex index(int row, int column, const QModelIndex& parent = {}) const override;
    [[nodiscard]] QModelIndex parent(const QModelIndex& index) const override;
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

  private:
    [[nodiscard]] QModelIndex findBelow(const QModelIndex& parent, ItemId item) const;

    std::unique_ptr<FittedNode> root_;
};

/// One thing in its place: its dipstick, and beside it place, item, life and the task that governs, in two
/// lines.
class FittedDelegate : public QStyledItemDelegate {
    Q_OBJECT

  public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

}  // namespace wm::ui
