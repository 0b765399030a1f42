// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QRectF>
#include <optional>

#include "ui/theme/tokens.h"

class QPainter;

namespace wm::ui {

/// What is left of a life, as heights on a ruled stick: 1 is its full length, 0 its foot, where the life
/// ends.
struct DipstickLevels {
    /// Low and high are the ends of the bracket; low <= best <= high. Below 0: past the end.
    struct Left {
        double low;
        double best;
        double high;
        friend bool operator==(const Left&, const Left&) = default;
    };
    std::optional<Left> left;         ///< none: nobody knows
    std::optional<double> usualMark;  ///< where the job is usually done
    std::optional<double> limitMark;  ///< where it must have been done
    friend bool operator==(const DipstickLevels&, const DipstickLevels&) = default;
};

/// An upright ruled stick in the middle of `rect`. Wet up to what is left: solid to the low end of the
/// bracket, thinning to the high end, a line across at the best. The usual mark is an open arrow, the limit a
/// double bar. Past the end the stick is dry and its foot is filled; an unknown life has a dashed stick and
/// no level. Good from 24 x 48 up. Figures beside it are the caller's: see dipstickHeight.
void paintDipstick(QPainter& painter, const QRectF& rect, const DipstickLevels& levels, const Tokens& tokens);

/// Where a level lies: the y of `fraction`, held within the stick and its foot.
double dipstickHeight(const QRectF& rect, double fraction);

}  // namespace wm::ui
