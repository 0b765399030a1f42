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
// Brings the text, clear of the bar, under the head of its column.
constexpr int kTextInset = 5;

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
    const bool indented = first && qobject_cast<const QTreeView*>(option.widget) != nullptr;
    plain.rect.adjust(indented ? 0 : kTextInset, 0, 0, 0);
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
    return QStyledItemDelegate::sizeHint(option, index) + QSize(kSpaceClose, kSpaceClose);
}

void dressRows(QAbstractItemView& view) {
    view.setItemDelegate(new RowDelegate(&view));
    view.setSelectionBehavior(QAbstractItemView::SelectRows);
    view.setSelectionMode(QAbstractItemView::SingleSelection);
    view.setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    QHeaderView* header = nullptr;
    if (auto* table = qobject_cast<QTableView*>(&view)) {
        header = table->horizontalHeader();
        table->setShowGrid(false);
        table->setCornerButtonEnabled(false);
        table->verticalHeader()->hide();
        table->verticalHeader()->setDefaultSectionSize(table->fontMetrics().height() + kSpaceLine);
        table->setWordWrap(false);
    } else if (auto* tree = qobject_cast<QTreeView*>(&view)) {
        header = tree->header();
        tree->setUniformRowHeights(true);
    }
    if (header != nullptr) {
        header->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
        header->setHighlightSections(false);
        header->setStretchLastSection(true);
    }
}

}  // namespace wm::ui
