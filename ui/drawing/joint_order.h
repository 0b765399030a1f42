// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFont>
#include <QRectF>
#include <QString>
#include <vector>

#include "core/fastening/rows.h"
#include "ui/theme/tokens.h"

class QPainter;

namespace wm::ui {

/// In what order the fasteners of a joint are tightened, as far as a picture shows it.
struct JointOrder {
    fastening::Sequence sequence = fastening::Sequence::Any;
    int count = 1;
    int step = 3;                  ///< EveryNth: from one spoke to the next of a lap
    std::vector<QString> names{};  ///< Listed: one a fastener, in order
};

/// The places of the fasteners, 0 to count - 1, in the order in which they are tightened; empty where there
/// is none to show. CrissCross and EveryNth count places around a circle, clockwise from the top; Spiral
/// counts along the upper row, then along the lower one. Examples: 4 criss-cross is 0 2 1 3; 5 is 0 2 4 1 3;
/// 9 spokes, every 3rd: 0 3 6, 1 4 7, 2 5 8, a lap each.
std::vector<int> tighteningSequence(const JointOrder& order);

/// A line drawing with numbers: of the scheme, not of the part. The manual's own picture goes before it.
/// Good from 120 x 120 up; a list needs a line a name. A unit is a pixel of 1/96 inch: on a printer scale the
/// painter to that and give a font sized in pixels. So it is for every drawing in this folder.
void paintJointOrder(QPainter& painter, const QRectF& rect, const JointOrder& order, const QFont& font,
                     const Tokens& tokens);
void paintJointOrderOnPaper(QPainter& painter, const QRectF& rect, const JointOrder& order,
                            const QFont& font);

}  // namespace wm::ui
