// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFont>
#include <cstdint>

namespace wm::ui {

/// Distances between things on a page, in logical pixels: nothing else is used.
inline constexpr int kSpaceHair = 4;
inline constexpr int kSpaceClose = 8;
inline constexpr int kSpaceLine = 12;
inline constexpr int kSpaceGroup = 16;
inline constexpr int kSpaceSection = 24;
inline constexpr int kSpacePage = 32;
inline constexpr int kRadius = 3;

/// How much a figure matters.
enum class FigureSize : std::uint8_t { InText, Noted, Large };

QFont pageTitleFont(const QFont& base);
QFont sectionFont(const QFont& base);
/// Digits that can't be taken for one another and stand in columns: B612 Mono (a cockpit face) where it is
/// installed; otherwise the system's face for fixed pitch. For whole numbers and big figures alone: its
/// points are as wide as its digits, its letters too. Units, and figures in tables, stand in the base face.
QFont figureFont(const QFont& base, FigureSize size);
/// Smaller, for what is beside a figure: axis, unit, footnote. Never below 8 pt.
QFont noteFont(const QFont& base);

}  // namespace wm::ui
