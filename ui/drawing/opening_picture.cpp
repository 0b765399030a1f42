// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/opening_picture.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/drawing/device_space.h"
#include "ui/theme/type.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

constexpr double kJobMark = 16.0;
constexpr double kIndent = 20.0;
constexpr double kArrow = 18.0;

double lineHeight(const QFontMetricsF& metrics) {
    return std::max(metrics.height(), kJobMark) + 6.0;
}

double indentOf(const OpeningStep& step) {
    return kIndent * std::clamp(step.depth, 0, 12);
}

QString labelOf(const OpeningStep& step) {
    return step.open ? tr("(open)") : step.label;
}

std::optional<std::size_t> parentOf(const std::vector<OpeningStep>& steps, std::size_t child) {
    for (std::size_t i = child; i-- > 0;) {
        if (steps[i].depth < steps[child].depth) {
            return i;
        }
    }
    return std::nullopt;
}

double widestLabel(const std::vector<OpeningStep>& steps, const QFontMetricsF& metrics) {
    double widest = 0.0;
    for (const OpeningStep& step : steps) {
        widest = std::max(widest, indentOf(step) + metrics.horizontalAdvance(labelOf(step)));
    }
    return widest;
}

void paintElbow(QPainter& painter, const OpeningLayout::Row& row, const OpeningLayout::Row& parent,
                const Tokens& tokens) {
    const double x = parent.label.left() + 6.0;
    paintVertical(painter, x, parent.middle + parent.label.height() / 2.0, row.middle, tokens.pencil);
    paintHorizontal(painter, x, row.label.left() - 4.0, row.middle, tokens.pencil);
}

void paintArrow(QPainter& painter, double right, double y, const QColor& color) {
    paintHorizontal(painter, right - kArrow + 4.0, right - 1.0, y, color);
    painter.setPen(QPen(color, 1.3));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(QPolygonF({{right - 5.0, y - 3.5}, {right - 1.0, y}, {right - 5.0, y + 3.5}}));
}

}  // namespace

OpeningLayout layOutOpening(const std::vector<OpeningStep>& steps, double width, const QFont& font) {
    const QFontMetricsF metrics(font);
    const QFontMetricsF figures(figureFont(font, FigureSize::InText));
    const double line = lineHeight(metrics);
    const double minutes = figures.horizontalAdvance(QStringLiteral("000"));
    const double labels = std::min(std::ceil(widestLabel(steps, metrics)), width * 0.45);
    const double jobsAt = labels + kSpaceClose + minutes + kSpaceClose + kArrow + kSpaceHair;
    OpeningLayout layout{};
    double y = 0.0;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const double left = std::min(indentOf(steps[i]), labels);
        const double room = std::max(0.0, labels - left);
        layout.rows.push_back(
            {QRectF(left, y, room, line), metrics.elidedText(labelOf(steps[i]), Qt::ElideRight, room + 0.5),
             QRectF(labels + kSpaceClose, y, minutes, line), y + line / 2.0, parentOf(steps, i)});
        double x = jobsAt;
        for (std::size_t job = 0; job < steps[i].jobs.size(); ++job) {
            const QString& name = steps[i].jobs[job].name;
            const double most = std::max(kJobMark, width - jobsAt);
            const double needed = std::min(kJobMark + 4.0 + std::ceil(metrics.horizontalAdvance(name)), most);
            if (x > jobsAt && x + needed > width) {
                x = jobsAt;
                y += line;
            }
            layout.jobs.push_back(
                {{i, job},
                 QRectF(x, y, needed, line),
                 metrics.elidedText(name, Qt::ElideRight, std::max(0.0, needed - kJobMark - 4.0))});
            x += needed + kSpaceLine;
        }
        y += line;
    }
    layout.size = QSizeF(width, y);
    return layout;
}

void paintOpening(QPainter& painter, const QPointF& corner, const std::vector<OpeningStep>& steps,
                  const OpeningLayout& layout, const QFont& font, const Tokens& tokens) {
    painter.save();
    painter.translate(corner);
    painter.setRenderHint(QPainter::Antialiasing);
    constexpr int kLeft = Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine;
    for (std::size_t i = 0; i < layout.rows.size(); ++i) {
        const OpeningLayout::Row& row = layout.rows[i];
        if (row.parent) {
            paintElbow(painter, row, layout.rows[*row.parent], tokens);
        }
        painter.setFont(font);
        painter.setPen(steps[i].open ? tokens.pencil : tokens.ink);
        painter.drawText(row.label, kLeft, row.text);
        if (!steps[i].open) {
            painter.setFont(figureFont(font, FigureSize::InText));
            painter.drawText(row.minutes, Qt::AlignRight | Qt::AlignVCenter,
                             QString::number(steps[i].minutes));
        }
        if (!steps[i].jobs.empty()) {
            paintArrow(painter, row.minutes.right() + kSpaceClose + kArrow, row.middle, tokens.pencil);
        }
    }
    painter.setFont(font);
    for (const OpeningLayout::JobPlace& place : layout.jobs) {
        const OpeningStep::Job& job = steps[place.id.step].jobs[place.id.job];
        const QRectF mark(place.area.left(), place.area.center().y() - kJobMark / 2.0, kJobMark, kJobMark);
        paintMark(painter, mark, job.mark, tokens);
        painter.setPen(tokens.ink);
        painter.drawText(place.area.adjusted(kJobMark + 4.0, 0.0, 2.0, 0.0), kLeft, place.text);
    }
    painter.restore();
}

}  // namespace wm::ui
