// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFont>
#include <QString>
#include <vector>

namespace wm::ui {

// Type on paper, in points. Steps are read at arm's length, torque from the bench; boxes are for gloves.

inline constexpr double kPointsPerMm = 72.0 / 25.4;
inline constexpr double kTick = 9.0 * kPointsPerMm;
inline constexpr int kTorqueSize = 26;
inline constexpr int kSectionSize = 18;
inline constexpr int kHeadSize = 16;
inline constexpr int kJobSize = 16;
inline constexpr int kStepSize = 15;
inline constexpr int kNoteSize = 12;
inline constexpr int kSmallSize = 10;

/// A face made for reading digits in bad light (B612) where it can be had, else DejaVu Sans, else the
/// system's.
QFont paperFont(int size, bool bold = false);

struct TextLine {
    QString text;
    QFont font;
    double width = 0;
    double height = 0;
    double ascent = 0;
};

double widthOf(const QString& text, const QFont& font);
TextLine oneLine(const QString& text, const QFont& font);
/// As many lines as it takes to stay within `width`; line breaks in the text are kept, a number never parts
/// from its unit.
std::vector<TextLine> wrapped(const QString& text, const QFont& font, double width);
/// One line, its end cut off with an ellipsis where it does not fit.
TextLine elided(const QString& text, const QFont& font, double width);

}  // namespace wm::ui
