// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/joint_order.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "ui/drawing/device_space.h"
#include "ui/theme/type.h"

namespace wm::ui {

namespace {

using fastening::Sequence;

constexpr double kLine = 1.3;

QPointF around(const QPointF& middle, double radius, double turns) {
    const double angle = turns * 2.0 * std::numbers::pi - std::numbers::pi / 2.0;
    return middle + radius * QPointF(std::cos(angle), std::sin(angle));
}

class OrderPainter {
  public:
    OrderPainter(QPainter& painter, const QRectF& rect, const JointOrder& order, const QFont& font,
                 const Tokens& tokens)
        : painter_(painter),
          rect_(rect),
          order_(order),
          font_(font),
          tokens_(tokens),
          places_(tighteningSequence(order)) {
        painter_.setRenderHint(QPainter::Antialiasing);
        painter_.setFont(figureFont(font_, FigureSize::InText));
        painter_.setBrush(Qt::NoBrush);
    }

    void paintRing() {
        const int count = std::max(1, order_.count);
        const double side = std::min(rect_.width(), rect_.height());
        const double outer = side / 2.0 - 2.0;
        const double apart = 2.0 * std::numbers::pi * outer * 0.72 / count;
        const double nut = std::clamp(apart * 0.42, 6.0, std::min(15.0, side * 0.11));
        const double radius = outer - nut - 5.0;
        paintCircle(rect_.center(), outer, tokens_.pencil);
        paintCircle(rect_.center(), std::max(4.0, radius - nut - 5.0), tokens_.rule);
        std::vector<QPointF> points;
        for (const int place : places_) {
            points.push_back(around(rect_.center(), radius, static_cast<double>(place) / count));
        }
        paintWay(points);
        for (int place = 0; place < count; ++place) {
            const auto found = std::find(places_.begin(), places_.end(), place);
            const int number = found == places_.end() ? 0 : static_cast<int>(found - places_.begin()) + 1;
            paintNut(around(rect_.center(), radius, static_cast<double>(place) / count), nut, number);
        }
    }

    void paintRows() {
        const int columns = (static_cast<int>(places_.size()) + 1) / 2;
        const double nut = std::clamp(rect_.width() / std::max(2, columns) * 0.28, 6.0, 15.0);
        const double apart =
            columns > 1 ? std::min((rect_.width() - 2.0 * nut - 20.0) / (columns - 1), nut * 4.2) : 0.0;
        const double rows = std::min(rect_.height() - 2.0 * nut - 20.0, nut * 4.4);
        const QPointF middle = rect_.center();
        const auto at = [&](int place) {
            const int column = place % columns;
            return middle +
                   QPointF((column - (columns - 1) / 2.0) * apart, place < columns ? -rows / 2 : rows / 2);
        };
        const QRectF body(QPointF(middle.x() - apart * (columns - 1) / 2.0, middle.y() - rows / 2.0),
                          QSizeF(apart * (columns - 1), rows));
        painter_.setPen(QPen(tokens_.pencil, kLine));
        painter_.drawRoundedRect(body.adjusted(-nut - 8.0, -nut - 8.0, nut + 8.0, nut + 8.0), kRadius,
                                 kRadius);
        std::vector<QPointF> points;
        for (const int place : places_) {
            points.push_back(at(place));
        }
        paintWay(points);
        for (std::size_t i = 0; i < points.size(); ++i) {
            paintNut(points[i], nut, static_cast<int>(i) + 1);
        }
    }

    void paintWheel() {
        const int count = std::max(1, order_.count);
        const int step = std::clamp(order_.step, 1, count);
        const double outer = std::min(rect_.width(), rect_.height()) / 2.0 - 18.0;
        const double inner = outer - 6.0;
        const QPointF middle = rect_.center();
        paintCircle(middle, outer, tokens_.ink);
        paintCircle(middle, inner, tokens_.pencil);
        paintCircle(middle, outer * 0.16, tokens_.ink);
        // The valve stands at the top, between the last spoke and the first.
        const QPointF valve = around(middle, inner, 0.0);
        painter_.fillRect(QRectF(valve.x() - 1.5, valve.y(), 3.0, 10.0), tokens_.ink);
        const int lap = (count + step - 1) / step;
        for (std::size_t i = 0; i < places_.size(); ++i) {
            const double turns = (places_[i] + 0.5) / count;
            const bool first = static_cast<int>(i) < lap;
            painter_.setPen(first ? QPen(tokens_.ink, 2.0) : QPen(tokens_.rule, kLine));
            painter_.drawLine(around(middle, outer * 0.16 + 1.0, turns), around(middle, inner - 1.0, turns));
            if (first || static_cast<int>(i) == lap) {
                painter_.setPen(first ? tokens_.ink : tokens_.pencil);
                paintNumber(around(middle, outer + 10.0, turns), static_cast<int>(i) + 1);
            }
        }
    }

    void paintList() {
        const QFontMetricsF metrics(font_);
        const double line = std::max(metrics.height() + 8.0, 26.0);
        double y = rect_.top() + line / 2.0;
        for (std::size_t i = 0; i < places_.size() && y + line / 2.0 <= rect_.bottom() + 0.5; ++i) {
            const QPointF nut(rect_.left() + 12.0, y);
            if (i > 0) {
                paintVertical(painter_, nut.x(), y - line + 10.5, y - 10.5, tokens_.pencil);
            }
            paintNut(nut, 10.0, static_cast<int>(i) + 1);
            painter_.setFont(font_);
            painter_.setPen(tokens_.ink);
            const QRectF words(rect_.left() + 32.0, y - line / 2.0, rect_.width() - 32.0, line);
            painter_.drawText(words, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine,
                              metrics.elidedText(order_.names[i], Qt::ElideRight, words.width()));
            y += line;
        }
    }

  private:
    void paintCircle(const QPointF& middle, double radius, const QColor& color) {
        painter_.setPen(QPen(color, kLine));
        painter_.setBrush(Qt::NoBrush);
        painter_.drawEllipse(middle, radius, radius);
    }

    // From one to the next, thin; where the order is long the numbers alone are clearer.
    void paintWay(const std::vector<QPointF>& points) {
        if (points.size() > 12) {
            return;
        }
        painter_.setPen(QPen(tokens_.pencil, 1.0, Qt::DashLine));
        for (std::size_t i = 1; i < points.size(); ++i) {
            painter_.drawLine(points[i - 1], points[i]);
        }
    }

    void paintNut(const QPointF& middle, double radius, int number) {
        QPolygonF corners;
        for (int i = 0; i < 6; ++i) {
            corners << around(middle, radius, (i + 0.5) / 6.0);
        }
        // Nothing shows through: neither the way nor the circle.
        painter_.setPen(QPen(tokens_.ink, number == 1 ? 2.4 : kLine));
        painter_.setBrush(tokens_.paper);
        painter_.drawPolygon(corners);
        painter_.setBrush(Qt::NoBrush);
        if (number > 0) {
            painter_.setPen(tokens_.ink);
            QFont digits = figureFont(font_, FigureSize::InText);
            digits.setPixelSize(std::max(7, static_cast<int>(radius * (number > 9 ? 0.9 : 1.15))));
            painter_.setFont(digits);
            paintNumber(middle, number);
        }
    }

    void paintNumber(const QPointF& middle, int number) {
        painter_.drawText(QRectF(middle.x() - 20.0, middle.y() - 20.0, 40.0, 40.0), Qt::AlignCenter,
                          QString::number(number));
    }

    QPainter& painter_;
    QRectF rect_;
    const JointOrder& order_;
    QFont font_;
    const Tokens& tokens_;
    std::vector<int> places_;
};

}  // namespace

void paintJointOrder(QPainter& painter, const QRectF& rect, const JointOrder& order, const QFont& font,
                     const Tokens& tokens) {
    painter.save();
    OrderPainter part(painter, rect, order, font, tokens);
    switch (order.sequence) {
        case Sequence::Any:
        case Sequence::CrissCross:
            part.paintRing();
            break;
        case Sequence::Spiral:
            part.paintRows();
            break;
        case Sequence::EveryNth:
            part.paintWheel();
            break;
        case Sequence::Listed:
            part.paintList();
            break;
    }
    painter.restore();
}

void paintJointOrderOnPaper(QPainter& painter, const QRectF& rect, const JointOrder& order,
                            const QFont& font) {
    paintJointOrder(painter, rect, order, font, printTokens());
}

}  // namespace wm::ui
