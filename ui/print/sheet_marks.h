// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFont>
#include <QLineF>
#include <QRectF>
#include <QString>
#include <functional>
#include <variant>
#include <vector>

class QPainter;

namespace wm::ui {

// What is laid on paper, in points from the top left of the printable area. A page is a list of these, so
// that it can be measured without being painted.

/// One line of text that never wraps; `rect` spans its ascent, descent and width.
struct TextMark {
    QRectF rect;
    double baseline = 0;  ///< from the top of rect
    QString text;
    QFont font;
};
/// A straight line. There is one weight of line, and a heavy one that only says where it is safe to stop.
struct RuleMark {
    QLineF line;
    bool heavy = false;
};
/// An empty box, to tick or to write in.
struct BoxMark {
    QRectF rect;
};
/// Stands at a figure that nobody confirmed.
struct WedgeMark {
    QRectF rect;
};
/// The program's mark, in the page head.
struct WitnessMark {
    QRectF rect;
};
struct PictureMark {
    QRectF rect;
    std::function<void(QPainter&, const QRectF&)> paint;
};

using Mark = std::variant<TextMark, RuleMark, BoxMark, WedgeMark, WitnessMark, PictureMark>;

inline constexpr double kLineWeight = 0.8;
inline constexpr double kHeavyWeight = 2.6;

QRectF boundsOf(const Mark& mark);
Mark movedBy(Mark mark, double dx, double dy);
/// Paints in points; the painter must be scaled so that one unit is a point.
void paintMarks(QPainter& painter, const std::vector<Mark>& marks);

}  // namespace wm::ui
