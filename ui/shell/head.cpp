// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/head.h"

#include <QFontMetrics>
#include <QPainter>

#include "ui/drawing/device_space.h"
#include "ui/drawing/paint_stroke.h"
#include "ui/theme/plain.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"

namespace wm::ui {

namespace {

constexpr int kStroke = 6;

}  // namespace

Head::Head(QWidget* parent) : QAbstractButton(parent) {
    setCheckable(true);
    setFocusPolicy(Qt::TabFocus);
    setCursor(Qt::PointingHandCursor);
}

void Head::say(const QString& first, const QString& figure, const QString& second, const QString& key) {
    first_ = first;
    figure_ = figure;
    second_ = second;
    setAccessibleName(first);
    setAccessibleDescription(figure.isEmpty() ? second : figure + QStringLiteral(", ") + second);
    setToolTip(asTip(key.isEmpty() ? second : QStringLiteral("%1 (%2)").arg(second, key)));
    update();
}

QSize Head::sizeHint() const {
    return {160,
            QFontMetrics(sectionFont(font())).height() + fontMetrics().height() + kSpaceClose * 2 + kStroke};
}

void Head::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens tokens = tokensFor(palette());
    const QRect inner = rect().adjusted(kSpaceLine, kSpaceClose, -kSpaceLine, -kStroke);
    QFont title = sectionFont(font());
    title.setBold(isChecked());
    const QFont digits = sectionFont(font());
    const int firstHeight = QFontMetrics(title).height();
    const int figureWidth = QFontMetrics(digits).horizontalAdvance(figure_);
    const QRect firstLine(inner.left(), inner.top(), inner.width(), firstHeight);
    painter.setFont(title);
    painter.setPen(tokens.ink);
    const int room = inner.width() - (figure_.isEmpty() ? 0 : figureWidth + kSpaceClose);
    painter.drawText(firstLine, Qt::AlignLeft | Qt::AlignVCenter,
                     QFontMetrics(title).elidedText(first_, Qt::ElideRight, room));
    painter.setFont(digits);
    painter.drawText(firstLine, Qt::AlignRight | Qt::AlignVCenter, figure_);
    painter.setFont(font());
    painter.setPen(tokens.pencil);
    const QRect secondLine(inner.left(), inner.top() + firstHeight, inner.width(),
                           fontMetrics().height() + 2);
    painter.drawText(secondLine, Qt::AlignLeft | Qt::AlignVCenter,
                     fontMetrics().elidedText(second_, Qt::ElideRight, inner.width()));
    if (isChecked())
        paintStroke(painter, QRectF(kSpaceLine, height() - kStroke, width() - 2 * kSpaceLine, kStroke - 1),
                    tokens.ink);
    if (hasFocus()) {
        painter.setPen(tokens.ink);
        painter.drawRect(rect().adjusted(2, 2, -3, -3));
    }
}

}  // namespace wm::ui
