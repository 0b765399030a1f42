// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QRectF>

class QColor;
class QPainter;

namespace wm::ui {

/// A stroke of a paint pen along the length of `rect`: straight, with the slanted end of a brush. It marks
/// what is chosen.
void paintStroke(QPainter& painter, const QRectF& rect, const QColor& color);

}  // namespace wm::ui
