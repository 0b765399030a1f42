// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/tables/cell_delegate.h"

#include <QPainter>
#include <algorithm>

#include "ui/drawing/wedge.h"
#include "ui/tables/table_model.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"

namespace wm::ui {

namespace {

constexpr int kGapBetweenColumns = 12;
constexpr int kClearOfTheBar = 6;

void paintIn(QStyleOptionViewItem& option, const QColor& color) {
    option.palette.setColor(QPalette::Text, color);
    option.palette.setColor(QPalette::HighlightedText, color);
}

// What the figure leaves at its end for the wedge.
int roomForWedge(const QFont& font) {
    return static_cast<int>(wedgeAdvance(QFontMetricsF(font))) + 4;
}

}  // namespace

void CellDelegate::initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const {
    RowDelegate::initStyleOption(option, index);
    const Tokens tokens = tokensFor(option->palette);
    if (index.data(TableModel::OverRole).toBool())
        paintIn(*option, tokens.over);
    else if (index.data(TableModel::PencilRole).toBool())
        paintIn(*option, tokens.pencil);
}

void CellDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
    if (!index.data(TableModel::UnconfirmedRole).toBool()) {
        RowDelegate::paint(painter, option, index);
        return;
    }
    // The figure gives up a little room at its end, for the wedge; the selection fills that room too.
    if (option.state.testFlag(QStyle::State_Selected))
        painter->fillRect(option.rect, option.palette.color(QPalette::Highlight));
    const QFontMetricsF metrics(option.font);
    QStyleOptionViewItem narrowed = option;
    narrowed.rect.adjust(0, 0, -roomForWedge(option.font), 0);
    RowDelegate::paint(painter, narrowed, index);
    const double baseline = option.rect.center().y() + metrics.capHeight() / 2.0;
    paintWedge(*painter, wedgeBehind(QPointF(narrowed.rect.right(), baseline), metrics),
               tokensFor(option.palette));
}

QSize CellDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    // Words that wrap have the room that paint() leaves them: clear of the bar, and of the wedge.
    QStyleOptionViewItem narrowed = option;
    const int wedge = index.data(TableModel::UnconfirmedRole).toBool() ? roomForWedge(option.font) : 0;
    if (narrowed.rect.width() > 0)
        narrowed.rect.setWidth(std::max(1, narrowed.rect.width() - kClearOfTheBar - wedge));
    QSize size = RowDelegate::sizeHint(narrowed, index);
    size.rwidth() += kGapBetweenColumns + wedge;
    return size;
}

}  // namespace wm::ui
