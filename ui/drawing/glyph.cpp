// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/glyph.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "ui/drawing/device_space.h"

namespace wm::ui {

namespace {

using Kind = MarkState::Kind;

constexpr double kMarkAngle = -45.0;
constexpr double kOverdueTurn = 110.0;
// As type has its own drawing for small sizes, so has the mark: below the first of these the bore would only
// fill the nut up and make a wheel of it, below the second the bristles would be a blur.
constexpr double kLeastWithBore = 32.0;
constexpr double kLeastWithBristles = 22.0;

/// The measures of one glyph in device pixels.
struct Frame {
    QPointF centre;
    double apothem;  ///< from the middle to the outer edge of a flat
    double stroke;
    double bore;   ///< radius to the middle of the bore's line
    double half;   ///< half the width of the mark
    double gap;    ///< what is left free beside the mark where it crosses a line
    double reach;  ///< from the middle to the mean end of the brush stroke
    double unit;   ///< a twenty-fourth of the square
    QRectF square;
    bool small;
};

Frame frameIn(const QRectF& device) {
    const double side = std::floor(std::min(device.width(), device.height()));
    const double left = std::round(device.center().x() - side / 2.0);
    const double top = std::round(device.center().y() - side / 2.0);
    const double unit = side / 24.0;
    const bool small = side < kLeastWithBore;
    // The flats fall between two pixels, above and below.
    const double apothem = std::max(3.0, std::round(7.6 * unit));
    // A corner of the turned nut stays above the lower edge.
    const double lowest = std::floor(top + side - apothem * 2.0 / std::numbers::sqrt3);
    const double middle = std::min(std::round(top + 14.6 * unit), lowest);
    Frame frame{};
    frame.centre = {left + 9.5 * unit, middle};
    frame.apothem = apothem;
    frame.stroke = std::max(1.3, 1.6 * unit);
    frame.bore = 2.1 * unit;
    frame.half = small ? 2.0 * unit : 1.8 * unit;
    frame.gap = std::max(0.8, 0.9 * unit);
    frame.reach = (small ? 17.3 : 17.1) * unit;
    frame.unit = unit;
    frame.square = {left, top, side, side};
    frame.small = small;
    return frame;
}

QPainterPath hexagon(const Frame& frame, double apothem, double turn) {
    const double radius = apothem * 2.0 / std::numbers::sqrt3;
    QPolygonF corners;
    for (int i = 0; i < 6; ++i) {
        const double angle = (turn + 60.0 * i) * std::numbers::pi / 180.0;
        corners << frame.centre + radius * QPointF(std::cos(angle), std::sin(angle));
    }
    QPainterPath path;
    path.addPolygon(corners);
    path.closeSubpath();
    return path;
}

QPainterPath disc(const Frame& frame, double radius) {
    QPainterPath path;
    path.addEllipse(frame.centre, radius, radius);
    return path;
}

QPainterPath turned(const Frame& frame, const QPainterPath& along, double degrees) {
    QTransform transform;
    transform.translate(frame.centre.x(), frame.centre.y());
    transform.rotate(degrees);
    return transform.map(along);
}

// A stripe that leaves the middle at `degrees`, with straight ends.
QPainterPath stripe(const Frame& frame, double degrees, double from, double to, double half) {
    QPainterPath path;
    path.addRect(QRectF(from, -half, to - from, 2.0 * half));
    return turned(frame, path, degrees);
}

// The paint itself: where the brush left it, its bristles ended one after the other.
QPainterPath brushStroke(const Frame& frame, double from) {
    const double half = frame.half;
    const double end = frame.reach;
    QPainterPath path;
    path.moveTo(from, -half);
    if (frame.square.width() < kLeastWithBristles) {
        path.lineTo(end - 0.9 * half, -half);
        path.lineTo(end + 0.5 * half, half);
    } else {
        const double unit = frame.unit;
        path.lineTo(end - 1.3 * unit, -half);
        path.quadTo(end - 0.5 * unit, -half * 0.95, end - 0.3 * unit, -half * 0.6);
        path.lineTo(end - 0.7 * unit, -half * 0.4);
        path.lineTo(end + 0.6 * unit, -half * 0.05);
        path.lineTo(end + 0.1 * unit, half * 0.3);
        path.lineTo(end + 0.9 * unit, half * 0.7);
        path.quadTo(end + 0.7 * unit, half, end - 0.2 * unit, half);
    }
    path.lineTo(from, half);
    path.closeSubpath();
    return turned(frame, path, kMarkAngle);
}

QPainterPath nutLine(const Frame& frame, double turn) {
    return hexagon(frame, frame.apothem, turn).subtracted(hexagon(frame, frame.apothem - frame.stroke, turn));
}

void paintBore(QPainter& painter, const Frame& frame, const QColor& color) {
    if (frame.small) {
        return;
    }
    const double half = std::max(0.65, frame.stroke * 0.38);
    painter.fillPath(disc(frame, frame.bore + half).subtracted(disc(frame, frame.bore - half)), color);
}

// Where the mark begins, seen from the middle of the nut.
double markStart(const Frame& frame) {
    return frame.small ? 0.4 * frame.unit : frame.bore + frame.stroke * 0.4 + frame.gap * 0.4;
}

void paintInHand(QPainter& painter, const Frame& frame, const Tokens& tokens) {
    painter.fillPath(nutLine(frame, 0.0), tokens.ink);
    paintBore(painter, frame, tokens.pencil);
    painter.fillPath(brushStroke(frame, markStart(frame)), tokens.ink);
}

// The half of the mark that stayed on the surface, clear of the nut that turned away from it.
QPainterPath halfBeside(const Frame& frame, double turn) {
    return brushStroke(frame, frame.bore).subtracted(hexagon(frame, frame.apothem + frame.gap, turn));
}

void paintBeforeEvent(QPainter& painter, const Frame& frame, double turn, const Tokens& tokens) {
    const double angle = kMarkAngle + turn;
    const double far = frame.reach;
    const QPainterPath free = stripe(frame, angle, markStart(frame), far, frame.half + 0.5 * frame.gap);
    painter.fillPath(nutLine(frame, turn).subtracted(free), tokens.ink);
    paintBore(painter, frame, tokens.pencil);
    const QPainterPath nutHalf = stripe(frame, angle, markStart(frame), far, frame.half)
                                     .intersected(hexagon(frame, frame.apothem, turn));
    painter.fillPath(nutHalf, tokens.due);
    painter.fillPath(halfBeside(frame, turn), tokens.due);
}

// Turned to the limit, and its outline doubled: here or beyond, nobody can say.
void paintMayBeOver(QPainter& painter, const Frame& frame, const Tokens& tokens) {
    const double angle = kMarkAngle + kMostTurn;
    const double far = frame.reach;
    const double inner = frame.apothem - frame.stroke - std::max(1.0, 1.1 * frame.unit);
    const QPainterPath free = stripe(frame, angle, markStart(frame), far, frame.half + 0.5 * frame.gap);
    const QPainterPath core = hexagon(frame, inner, kMostTurn);
    // In the smallest drawing a second line would be a blur: what it encloses is filled.
    const QPainterPath second =
        frame.square.width() < kLeastWithBristles
            ? core
            : core.subtracted(hexagon(frame, inner - frame.stroke, kMostTurn)).subtracted(free);
    painter.fillPath(nutLine(frame, kMostTurn).subtracted(free).united(second), tokens.due);
    const QPainterPath nutHalf = stripe(frame, angle, markStart(frame), far, frame.half)
                                     .intersected(hexagon(frame, frame.apothem, kMostTurn));
    painter.fillPath(nutHalf, tokens.due);
    painter.fillPath(halfBeside(frame, kMostTurn), tokens.due);
}

void paintOverdue(QPainter& painter, const Frame& frame, const Tokens& tokens) {
    const double rim = frame.apothem - std::max(1.0, 1.2 * frame.unit);
    const double start = -0.8 * frame.unit;
    QPainterPath nut = hexagon(frame, frame.apothem, kOverdueTurn);
    nut = nut.subtracted(stripe(frame, kMarkAngle + kOverdueTurn, start, rim, frame.half * 0.9));
    painter.fillPath(nut, tokens.over);
    painter.fillPath(halfBeside(frame, kOverdueTurn), tokens.over);
}

void paintNoRecord(QPainter& painter, const Frame& frame, const Tokens& tokens) {
    // Corners stay, the middle of each flat is left out: at 16 px it is still a hexagon.
    const double gap = std::max(0.75, 1.25 * frame.unit);
    QPainterPath line = nutLine(frame, 0.0);
    for (int i = 0; i < 6; ++i) {
        line = line.subtracted(stripe(frame, 30.0 + 60.0 * i, frame.bore, frame.reach, gap));
    }
    painter.fillPath(line, tokens.unmarked);
    paintBore(painter, frame, tokens.unmarked);
}

// Two hands of a clock, without a clock: twelve and four.
void paintPutOff(QPainter& painter, const Frame& frame, const Tokens& tokens) {
    const double unit = frame.unit;
    const QPointF pivot(std::round(frame.square.right() - 4.6 * unit) + frame.stroke / 2.0,
                        std::round(frame.square.bottom() - 3.0 * unit));
    QPen pen(tokens.ink, frame.stroke);
    pen.setCapStyle(Qt::FlatCap);
    pen.setJoinStyle(Qt::RoundJoin);
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    QPainterPath hands;
    hands.moveTo(pivot - QPointF(0.0, 5.4 * unit));
    hands.lineTo(pivot);
    hands.lineTo(pivot + QPointF(2.9 * unit, 1.8 * unit));
    painter.drawPath(hands);
}

}  // namespace

void paintMark(QPainter& painter, const QRectF& rect, const MarkState& state, const Tokens& tokens) {
    const DeviceSpace space(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    const Frame frame = frameIn(space.map(rect));
    switch (state.kind) {
        case Kind::InHand:
            paintInHand(painter, frame, tokens);
            break;
        case Kind::BeforeEvent:
            paintBeforeEvent(painter, frame, std::clamp(state.turnDegrees, kLeastTurn, kMostTurn), tokens);
            break;
        case Kind::MayBeOver:
            paintMayBeOver(painter, frame, tokens);
            break;
        case Kind::Overdue:
            paintOverdue(painter, frame, tokens);
            break;
        case Kind::NoRecord:
            paintNoRecord(painter, frame, tokens);
            break;
    }
    if (state.putOff) {
        paintPutOff(painter, frame, tokens);
    }
}

void paintMarkOnPaper(QPainter& painter, const QRectF& rect, const MarkState& state) {
    paintMark(painter, rect, state, printTokens());
}

}  // namespace wm::ui
