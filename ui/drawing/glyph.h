// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QIcon>
#include <QRectF>
#include <cstdint>

#include "ui/theme/tokens.h"

class QPainter;

namespace wm::ui {

/// How a task stands, as a drawing needs it.
struct MarkState {
    enum class Kind : std::uint8_t { InHand, BeforeEvent, MayBeOver, Overdue, NoRecord };
    Kind kind = Kind::NoRecord;
    /// BeforeEvent only: how far the nut has turned, 30 where it enters the event's reach, 80 at the limit.
    /// Held within 30 to 80, so that this standing can't be taken for another.
    double turnDegrees = 30.0;
    bool putOff = false;
    friend bool operator==(const MarkState&, const MarkState&) = default;
};

inline constexpr double kLeastTurn = 30.0;
inline constexpr double kMostTurn = 80.0;

/// The witness mark: a nut and the paint line across it, in the largest square in the middle of `rect`. No
/// ground is painted. Laid on the pixel grid; no stroke is thinner than 1.3 device pixels.
void paintMark(QPainter& painter, const QRectF& rect, const MarkState& state, const Tokens& tokens);

/// The same in black, for prints.
void paintMarkOnPaper(QPainter& painter, const QRectF& rect, const MarkState& state);

/// Crisp at every size and screen density: the icon draws the mark anew for each.
QIcon markIcon(const MarkState& state, const Tokens& tokens);

}  // namespace wm::ui
