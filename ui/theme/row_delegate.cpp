// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/theme/row_delegate.h"

#include <QHeaderView>
#include <QPainter>
#include <QTableView>
#include <QTreeView>

#include "ui/theme/tokens.h"
#include "ui/theme/type.h"

namespace wm::ui {

namespace {

constexpr int kBarWidth = 3;

bool standsFirst(const QWidget* view, const QModelIndex& index) {
    const QHeaderView* header = nullptr;
    if (const auto* table = qobject_cast<const QTableView*>(view)) {
        header = table->horizontalHeader();
    } else if (const auto* tree = qobject_cast<const QTreeView*>(view)) {
        header = tree->header();
    }
    if (header == nullptr) {
        return true;
    }
    for (int visual = 0; visual < header->count(); ++visual) {
        const int logical = header->logicalIndex(visual);
        if (!header->isSectionHidden(logical)) {
            return logical == index.column();
        }
    }
    return false;
}

// In a tree the bar stands at the edge of the row, not where the indented text begins.
int rowLeft(const QStyleOptionViewItem& option) {
    return qobject_cast<const QTreeView*>(option.widget) != nullptr ? 0 : option.rect.left();
}

}  // namespace

void RowDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const {
    QStyleOptionViewItem plain = option;
    plain.state &= ~(QStyle::State_Selected | QStyle::State_HasFocus | QStyle::State_MouseOver);
    const bool first = standsFirst(option.widget, index);
    if (first && rowLeft(option) == option.rect.left()) {
        plain.rect.adjust(kBarWidth + 1, 0, 0, 0);
    }
    const bool chosen = option.state.testFlag(QStyle::State_Selected);
    const Tokens tokens = tokensFor(option.palette);
    if (chosen) {
        painter->fillRect(option.rect, option.palette.color(QPalette::Highlight));
    }
    QStyledItemDelegate::paint(painter, plain, index);
    if (chosen && first) {
        const bool focused = option.widget != nullptr && option.widget->hasFocus();
        const QRect bar(rowLeft(option), option.rect.top(), kBarWidth, option.rect.height());
        painter->fillRect(bar, focused ? tokens.ink : tokens.pencil);
    }
}

QSize RowDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    return QStyledItemDelegate::sizeHint(option, index) + QSize(kSpaceClose, kSpaceHair);
}

}  // namespace wm::ui
