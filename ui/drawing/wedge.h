// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFontMetricsF>
#include <QRectF>

#include "ui/theme/tokens.h"

class QPainter;

namespace wm::ui {

/// The wedge stands right after a figure that nobody has confirmed against the service manual, once a line at
/// most: low at the figure, high away from it, like a chock pushed in until somebody takes it out.
void paintWedge(QPainter& painter, const QRectF& rect, const Tokens& tokens);
void paintWedgeOnPaper(QPainter& painter, const QRectF& rect);

/// Where the wedge goes behind a figure that ends at `end` on its baseline, in a face with `metrics`.
QRectF wedgeBehind(const QPointF& end, const QFontMetricsF& metrics);
/// What wedgeBehind takes, with the gap before it: for the width of a line.
double wedgeAdvance(const QFontMetricsF& metrics);

}  // namespace wm::ui
