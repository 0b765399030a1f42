// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/paint_stroke.h"

#include <QPainter>
#include <QPainterPath>

namespace wm::ui {

void paintStroke(QPainter& painter, const QRectF& rect, const QColor& color) {
    const double lean = rect.height() * 1.2;
    QPainterPath path(rect.bottomLeft());
    path.lineTo(rect.left() + lean * 0.5, rect.top());
    path.lineTo(rect.right() - lean * 0.2, rect.top());
    // The brush lifts off: two hairs longer than the rest.
    path.lineTo(rect.right(), rect.top() + rect.height() * 0.25);
    path.lineTo(rect.right() - lean * 0.7, rect.top() + rect.height() * 0.5);
    path.lineTo(rect.right() - lean * 0.4, rect.top() + rect.height() * 0.75);
    path.lineTo(rect.right() - lean, rect.bottom());
    path.closeSubpath();
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillPath(path, color);
    painter.restore();
}

}  // namespace wm::ui
