// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/dipstick.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "ui/drawing/device_space.h"
#include "ui/theme/plain.h"

namespace wm::ui {

namespace {

constexpr double kMostPastEnd = -0.12;

/// Where the parts of the stick lie, in the caller's coordinates.
struct Stick {
    double middle;
    double half;    ///< of the blade's width
    double full;    ///< y of level 1
    double end;     ///< y of level 0
    double foot;    ///< y of the tip
    double handle;  ///< radius of the ring at the top
    double ringAt;  ///< y of its middle
};

Stick stickIn(const QRectF& rect) {
    Stick stick{};
    const double height = rect.height();
    stick.half = std::clamp(std::round(height * 0.05), 4.0, 7.0);
    stick.middle = rect.center().x();
    stick.handle = stick.half * 0.75;
    stick.ringAt = rect.top() + stick.handle + 1.0;
    stick.full = stick.ringAt + stick.handle + std::max(4.0, height * 0.05);
    stick.foot = rect.bottom() - 1.0;
    stick.end = stick.foot - std::max(7.0, height * 0.13);
    return stick;
}

double heightOn(const Stick& stick, double fraction) {
    const double held = std::clamp(fraction, kMostPastEnd, 1.0);
    return held >= 0.0 ? stick.end + (stick.full - stick.end) * held
                       : stick.end + (stick.foot - stick.end) * 0.7 * held / kMostPastEnd;
}

QPainterPath footPath(const Stick& stick) {
    QPainterPath path;
    path.moveTo(stick.middle - stick.half, stick.end);
    path.lineTo(stick.middle - stick.half, stick.foot - stick.half);
    path.lineTo(stick.middle, stick.foot);
    path.lineTo(stick.middle + stick.half, stick.foot - stick.half);
    path.lineTo(stick.middle + stick.half, stick.end);
    return path;
}

void paintBlade(QPainter& painter, const Stick& stick, const QColor& color, bool known) {
    QPen pen(color, 1.3);
    pen.setCapStyle(Qt::FlatCap);
    pen.setJoinStyle(Qt::MiterJoin);
    if (!known) {
        pen.setDashPattern({2.6, 2.0});
    }
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(QPointF(stick.middle, stick.ringAt), stick.handle, stick.handle);
    painter.drawPath(footPath(stick));
    painter.drawLine(QPointF(stick.middle, stick.ringAt + stick.handle), QPointF(stick.middle, stick.full));
    painter.drawPolyline(QPolygonF({{stick.middle - stick.half, stick.end},
                                    {stick.middle - stick.half, stick.full},
                                    {stick.middle + stick.half, stick.full},
                                    {stick.middle + stick.half, stick.end}}));
}

void paintRuling(QPainter& painter, const Stick& stick, const QColor& color) {
    const double outside = stick.middle - stick.half - 2.0;
    for (int tenth = 0; tenth <= 10; ++tenth) {
        const double length = tenth % 5 == 0 ? 6.0 : 3.0;
        paintHorizontal(painter, outside - length, outside, heightOn(stick, tenth / 10.0), color);
    }
}

void paintMarks(QPainter& painter, const Stick& stick, const DipstickLevels& levels, const QColor& color) {
    const double left = stick.middle + stick.half + 2.0;
    if (levels.usualMark) {
        const double y = heightOn(stick, *levels.usualMark);
        painter.setPen(QPen(color, 1.3));
        painter.setBrush(Qt::NoBrush);
        painter.drawPolyline(QPolygonF({{left + 5.0, y - 3.5}, {left + 0.5, y}, {left + 5.0, y + 3.5}}));
    }
    if (levels.limitMark) {
        const double y = heightOn(stick, *levels.limitMark);
        paintHorizontal(painter, left, left + 7.0, y - 1.5, color);
        paintHorizontal(painter, left, left + 7.0, y + 1.5, color);
    }
}

// Wet is hatched, as a service manual draws oil: no fill, so that the stick reads in any print.
void paintHatch(QPainter& painter, const Stick& stick, double top, double bottom, double step,
                const QPen& pen) {
    if (bottom - top < 0.5) {
        return;
    }
    painter.save();
    painter.setClipRect(QRectF(stick.middle - stick.half, top, 2.0 * stick.half, bottom - top),
                        Qt::IntersectClip);
    painter.setPen(pen);
    const double width = 2.0 * stick.half;
    const int lines = static_cast<int>(std::ceil((stick.foot - top + width) / step));
    for (int line = 0; line < lines; ++line) {
        const double y = stick.foot - line * step;
        painter.drawLine(QPointF(stick.middle - stick.half, y + width),
                         QPointF(stick.middle + stick.half, y));
    }
    painter.restore();
}

void paintWet(QPainter& painter, const Stick& stick, const DipstickLevels::Left& left, const Tokens& tokens) {
    const double low = std::min(heightOn(stick, left.low), stick.end);
    const double high = heightOn(stick, left.high);
    paintHatch(painter, stick, low, stick.end, 4.0, QPen(tokens.ink, 1.2));
    paintHatch(painter, stick, high, low, 6.0, QPen(tokens.pencil, 1.0));
    const double reach = stick.half + 2.0;
    paintHorizontal(painter, stick.middle - stick.half, stick.middle + stick.half, high, tokens.pencil);
    paintHorizontal(painter, stick.middle - reach, stick.middle + reach, heightOn(stick, left.best),
                    tokens.ink, 2.0);
}

void paintDry(QPainter& painter, const Stick& stick, const DipstickLevels::Left& left, const Tokens& tokens) {
    QPainterPath foot = footPath(stick);
    foot.closeSubpath();
    painter.fillPath(foot, tokens.over);
    paintHorizontal(painter, stick.middle - stick.half - 4.0, stick.middle + stick.half, stick.end,
                    tokens.over, 2.0);
    if (left.high > 0.0) {
        paintVertical(painter, stick.middle, heightOn(stick, left.high), stick.end, tokens.over, 1.0);
    }
}

}  // namespace

void paintDipstick(QPainter& painter, const QRectF& rect, const DipstickLevels& levels,
                   const Tokens& tokens) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    Stick stick = stickIn(rect);
    // The blade's two lines lie on whole pixels.
    const double pixel = devicePixel(painter);
    stick.middle = snappedX(painter, stick.middle) + pixel / 2.0;
    const bool known = levels.left.has_value();
    paintRuling(painter, stick, known ? tokens.pencil : tokens.unmarked);
    paintBlade(painter, stick, known ? tokens.ink : tokens.unmarked, known);
    paintMarks(painter, stick, levels, tokens.ink);
    if (known && levels.left->best < 0.0) {
        paintDry(painter, stick, *levels.left, tokens);
    } else if (known) {
        paintWet(painter, stick, *levels.left, tokens);
    }
    painter.restore();
}

double dipstickHeight(const QRectF& rect, double fraction) {
    return heightOn(stickIn(rect), fraction);
}

}  // namespace wm::ui
