// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/device_space.h"

#include <QPaintDevice>
#include <algorithm>
#include <cmath>

namespace wm::ui {

namespace {

double scaleOf(const QTransform& transform) {
    return std::sqrt(std::abs(transform.determinant()));
}

// A hairline is a logical pixel thick on a screen of any density, and about 0.2 mm on a printer.
double hairline(const QPainter& painter) {
    const QPaintDevice* device = painter.device();
    const bool print = device != nullptr && device->logicalDpiX() > 200;
    const double dots = print ? device->logicalDpiX() * 0.2 / 25.4 : scaleOf(painter.deviceTransform());
    return std::max(1.0, std::round(dots));
}

}  // namespace

DeviceSpace::DeviceSpace(QPainter& painter)
    : painter_(painter),
      toDevice_(painter.deviceTransform()),
      upright_(toDevice_.type() <= QTransform::TxScale && toDevice_.m11() > 0.0 && toDevice_.m22() > 0.0),
      scale_(upright_ ? scaleOf(toDevice_) : 1.0) {
    painter_.save();
    if (upright_) {
        painter_.setTransform(toDevice_.inverted(), true);
    }
}

DeviceSpace::~DeviceSpace() {
    painter_.restore();
}

QRectF DeviceSpace::map(const QRectF& rect) const {
    return upright_ ? toDevice_.mapRect(rect) : rect;
}

double devicePixel(const QPainter& painter) {
    const double scale = scaleOf(painter.deviceTransform());
    return scale > 0.0 ? 1.0 / scale : 1.0;
}

double snappedX(const QPainter& painter, double x) {
    const QTransform to = painter.deviceTransform();
    return to.type() <= QTransform::TxScale ? (std::round(x * to.m11() + to.dx()) - to.dx()) / to.m11() : x;
}

double snappedY(const QPainter& painter, double y) {
    const QTransform to = painter.deviceTransform();
    return to.type() <= QTransform::TxScale ? (std::round(y * to.m22() + to.dy()) - to.dy()) / to.m22() : y;
}

void paintHorizontal(QPainter& painter, double left, double right, double y, const QColor& color,
                     double thickness) {
    const double thick = std::round(std::max(1.0, thickness * hairline(painter))) * devicePixel(painter);
    const double top = snappedY(painter, y - thick / 2.0);
    painter.fillRect(QRectF(left, top, right - left, thick), color);
}

void paintVertical(QPainter& painter, double x, double top, double bottom, const QColor& color,
                   double thickness) {
    const double thick = std::round(std::max(1.0, thickness * hairline(painter))) * devicePixel(painter);
    const double left = snappedX(painter, x - thick / 2.0);
    painter.fillRect(QRectF(left, top, thick, bottom - top), color);
}

}  // namespace wm::ui
