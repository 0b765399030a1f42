// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/fitted_model.h"

#include <QPainter>
#include <QTreeView>
#include <utility>

#include "ui/theme/tokens.h"
#include "ui/theme/type.h"

namespace wm::ui {

namespace {

constexpr int kStickWidth = 26;
constexpr int kBar = 3;

QString spoken(const FittedNode& node) {
    QStringList words{node.place, node.item, node.life, node.governs};
    words.removeAll(QString());
    return words.join(QStringLiteral(", "));
}

void paintLine(QPainter& painter, const QRect& line, const QString& left, const QString& right,
               const QColor& leftInk, const QColor& rightInk) {
    const QFontMetrics metrics = painter.fontMetrics();
    const int rightWidth = right.isEmpty() ? 0 : metrics.horizontalAdvance(right) + kSpaceClose;
    painter.setPen(leftInk);
    painter.drawText(line, Qt::AlignLeft | Qt::AlignVCenter,
                     metrics.elidedText(left, Qt::ElideRight, line.width() - rightWidth));
    painter.setPen(rightInk);
    painter.drawText(line, Qt::AlignRight | Qt::AlignVCenter, right);
}

}  // namespace

FittedModel::FittedModel(QObject* parent)
    : QAbstractItemModel(parent), root_(std::make_unique<FittedNode>()) {}

void FittedModel::show(std::unique_ptr<FittedNode> root) {
    beginResetModel();
    root_ = std::move(root);
    endResetModel();
}

const FittedNode* FittedModel::node(const QModelIndex& index) const {
    return index.isValid() ? static_cast<const FittedNode*>(index.internalPointer()) : root_.get();
}

QModelIndex FittedModel::findBelow(const QModelIndex& parent, ItemId item) const {
    for (int row = 0; row < rowCount(parent); ++row) {
        const QModelIndex at = index(row, 0, parent);
        if (node(at)->id == item)
            return at;
        if (const QModelIndex below = findBelow(at, item); below.isValid())
            return below;
    }
    return {};
}

QModelIndex FittedModel::find(ItemId item) const {
    return findBelow({}, item);
}

QModelIndex FittedModel::index(int row, int column, const QModelIndex& parent) const {
    const auto* above = node(parent);
    if (row < 0 || column != 0 || row >= static_cast<int>(above->children.size()))
        return {};
    return createIndex(row, column, above->children[static_cast<std::size_t>(row)].get());
}

QModelIndex FittedModel::parent(const QModelIndex& index) const {
    if (!index.isValid())
        return {};
    const auto* above = node(index)->parent;
    if (above == nullptr || above == root_.get())
        return {};
    const auto& siblings = above->parent->children;
    for (std::size_t row = 0; row < siblings.size(); ++row)
        if (siblings[row].get() == above)
            return createIndex(static_cast<int>(row), 0, siblings[row].get());
    return {};
}

int FittedModel::rowCount(const QModelIndex& parent) const {
    return static_cast<int>(node(parent)->children.size());
}

int FittedModel::columnCount(const QModelIndex&) const {
    return 1;
}

QVariant FittedModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid())
        return {};
    const auto& shown = *node(index);
    if (role == Qt::DisplayRole)
        return shown.item.isEmpty() ? shown.place : QStringLiteral("%1: %2").arg(shown.place, shown.item);
    if (role == Qt::AccessibleTextRole)
        return spoken(shown);
    return {};
}

void FittedDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                           const QModelIndex& index) const {
    const auto* model = qobject_cast<const FittedModel*>(index.model());
    const auto& node = *model->node(index);
    const Tokens tokens = tokensFor(option.palette);
    painter->save();
    painter->setFont(option.font);
    if (option.state.testFlag(QStyle::State_Selected)) {
        const QRect row(0, option.rect.top(), option.rect.right() + 1, option.rect.height());
        const bool focused = option.widget != nullptr && option.widget->hasFocus();
        painter->fillRect(row, tokens.select);
        painter->fillRect(QRect(row.topLeft(), QSize(kBar, row.height())),
                          focused ? tokens.ink : tokens.pencil);
    }
    QRect room = option.rect.adjusted(kSpaceHair, 3, -kSpaceClose, -3);
    if (!node.id) {
        QFont heading = option.font;
        heading.setBold(true);
        painter->setFont(heading);
        paintLine(*painter, room, node.place, node.life, tokens.ink, tokens.ink);
        painter->restore();
        return;
    }
    if (node.stick)
        paintDipstick(*painter, QRectF(room.left(), room.top(), kStickWidth, room.height()), *node.stick,
                      tokens);
    room.setLeft(room.left() + kStickWidth + kSpaceClose);
    const QRect upper(room.left(), room.top(), room.width(), room.height() / 2);
    const QRect lower(room.left(), upper.bottom() + 1, room.width(), room.height() - upper.height());
    paintLine(*painter, upper, node.item, node.life, tokens.ink, tokens.ink);
    paintLine(*painter, lower, node.place, node.governs, tokens.pencil, tokens.pencil);
    painter->restore();
}

QSize FittedDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const auto* model = qobject_cast<const FittedModel*>(index.model());
    const int line = QFontMetrics(option.font).height();
    return {200, model->node(index)->id ? std::max(line * 2 + kSpaceLine, 54) : line + kSpaceClose};
}

}  // namespace wm::ui
