// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>

namespace wm::ui {

/// Relative luminance of an opaque sRGB colour, 0 (black) to 1 (white).
/// Source: Web Content Accessibility Guidelines (WCAG) 2.2, W3C Recommendation, "relative luminance".
double relativeLuminance(const QColor& color);

/// Contrast of `text` (which may be translucent) on an opaque `ground`, 1 to 21: (L1 + 0.05) / (L2 + 0.05).
/// Black on white is 21, #777777 on white 4.48, which just misses the 4.5 of ordinary text.
/// Source: WCAG 2.2, "contrast ratio"; limits in success criteria 1.4.3 (text) and 1.4.11 (graphics).
double contrastRatio(const QColor& text, const QColor& ground);

inline constexpr double kTextContrast = 4.5;
inline constexpr double kGraphicsContrast = 3.0;

}  // namespace wm::ui
