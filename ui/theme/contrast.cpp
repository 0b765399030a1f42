// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/theme/contrast.h"

#include <algorithm>
#include <cmath>

#include "ui/theme/tokens.h"

namespace wm::ui {

namespace {

double linear(double channel) {
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

}  // namespace

double relativeLuminance(const QColor& color) {
    return 0.2126 * linear(color.redF()) + 0.7152 * linear(color.greenF()) + 0.0722 * linear(color.blueF());
}

double contrastRatio(const QColor& text, const QColor& ground) {
    const double one = relativeLuminance(laidOver(text, ground));
    const double other = relativeLuminance(ground);
    return (std::max(one, other) + 0.05) / (std::min(one, other) + 0.05);
}

}  // namespace wm::ui
