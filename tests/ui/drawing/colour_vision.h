// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QImage>
#include <cstdint>
#include <vector>

namespace wm::ui {

enum class Vision : std::uint8_t { Full, Protanopia, Deuteranopia, Tritanopia, Grey };

/// The colour as that eye sees it.
/// Protanopia, deuteranopia and tritanopia: the matrices for severity 1.0 of G. M. Machado, M. M. Oliveira,
/// L. A. F. Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE
/// Transactions on Visualization and Computer Graphics 15(6), 2009, applied to linear RGB. Grey: luminance
/// alone.
QColor seenBy(Vision vision, const QColor& color);

/// CIE 1976 L*a*b* distance of two opaque sRGB colours (CIE 15, D65); about 2.3 is just noticeable.
double colourDistance(const QColor& one, const QColor& other);

/// The share of pixels, 0 to 1, that are further apart than `distance` to that eye.
double shareApart(const QImage& one, const QImage& other, Vision vision, double distance);

}  // namespace wm::ui
