// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/wedge.h"

#include <QPainter>
#include <QPolygonF>
#include <algorithm>
#include <cmath>

#include "ui/drawing/device_space.h"

namespace wm::ui {

namespace {

double side(const QFontMetricsF& metrics) {
    return std::max(6.0, std::round(metrics.capHeight() * 0.85));
}
double gap(const QFontMetricsF& metrics) {
    return std::max(2.0, std::round(metrics.capHeight() * 0.25));
}

}  // namespace

void paintWedge(QPainter& painter, const QRectF& rect, const Tokens& tokens) {
    const DeviceSpace space(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF place = space.map(rect);
    const double left = std::round(place.left());
    const double right = std::max(left + 4.0, std::round(place.right()));
    const double foot = std::round(place.bottom());
    const double top = std::min(foot - 4.0, std::round(place.top()));
    painter.setPen(Qt::NoPen);
    painter.setBrush(tokens.ink);
    painter.drawPolygon(QPolygonF({{left, foot}, {right, foot}, {right, top}}));
}

void paintWedgeOnPaper(QPainter& painter, const QRectF& rect) {
    paintWedge(painter, rect, printTokens());
}

QRectF wedgeBehind(const QPointF& end, const QFontMetricsF& metrics) {
    const double size = side(metrics);
    return {end.x() + gap(metrics), end.y() - size * 0.8, size * 1.25, size * 0.8};
}

double wedgeAdvance(const QFontMetricsF& metrics) {
    return gap(metrics) + side(metrics) * 1.25;
}

}  // namespace wm::ui
