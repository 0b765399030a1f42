// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPainter>
#include <QRectF>
#include <QTransform>

namespace wm::ui {

/// While it lives, the painter works in device pixels, so that edges can be laid on the pixel grid whatever
/// the screen's scale or the printer's resolution. Where the painter is turned or sheared there is no such
/// grid: then it keeps its coordinates and `pixel` is an estimate.
class DeviceSpace {
  public:
    explicit DeviceSpace(QPainter& painter);
    ~DeviceSpace();
    DeviceSpace(const DeviceSpace&) = delete;
    DeviceSpace& operator=(const DeviceSpace&) = delete;

    /// A rectangle in the caller's coordinates, in those that the painter has now.
    [[nodiscard]] QRectF map(const QRectF& rect) const;
    /// The length of one unit of the caller's coordinates in those that the painter has now.
    [[nodiscard]] double scale() const { return scale_; }

  private:
    QPainter& painter_;
    QTransform toDevice_;
    bool upright_;
    double scale_;
};

/// How long one device pixel is in the painter's coordinates.
double devicePixel(const QPainter& painter);
/// The nearest place, in the painter's coordinates, at which an edge falls between two device pixels.
double snappedX(const QPainter& painter, double x);
double snappedY(const QPainter& painter, double y);
/// Fills a hairline of `thickness` device pixels (at least one), laid on the grid.
void paintHorizontal(QPainter& painter, double left, double right, double y, const QColor& color,
                     double thickness = 1.0);
void paintVertical(QPainter& painter, double x, double top, double bottom, const QColor& color,
                   double thickness = 1.0);

}  // namespace wm::ui
