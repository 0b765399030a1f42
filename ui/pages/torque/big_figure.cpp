// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/big_figure.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>

#include "ui/drawing/wedge.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"

namespace wm::ui {

namespace {

// Times the large figure: capitals over 6 mm are 20 arc minutes at 1 m.
constexpr double kFromAMetre = 2.0;
constexpr double kSmallest = 0.6;

QFont larger(QFont font, double factor) {
    if (font.pointSizeF() > 0)
        font.setPointSizeF(font.pointSizeF() * factor);
    else
        font.setPixelSize(std::max(1, qRound(font.pixelSize() * factor)));
    return font;
}

// "first 2.0 h, then 15.0 h": words, for which the face of figures is too wide.
bool hasLetters(const QString& text) {
    return std::any_of(text.begin(), text.end(), [](QChar c) { return c.isLetter(); });
}

}  // namespace

BigFigure::BigFigure(QWidget* parent, From from)
    : QWidget(parent), times_(from == From::AMetre ? kFromAMetre : 1.0) {
    setObjectName(QStringLiteral("jointFigure"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void BigFigure::setFigure(const QString& digits, const QString& unit, bool unconfirmed) {
    digits_ = digits;
    unit_ = unit;
    unconfirmed_ = unconfirmed;
    setAccessibleName(unconfirmed ? tr("%1 %2, not confirmed").arg(digits, unit) : text());
    updateGeometry();
    update();
}

QFont BigFigure::fontAt(double factor) const {
    QFont face = figureFont(font(), FigureSize::Large);
    if (hasLetters(digits_))
        face.setFamilies(font().families());
    return larger(face, times_ * factor);
}

double BigFigure::widthAt(double factor) const {
    const QFontMetricsF digits(fontAt(factor));
    const QFontMetricsF unit(larger(pageTitleFont(font()), factor));
    return digits.horizontalAdvance(digits_) + kSpaceClose + unit.horizontalAdvance(unit_) +
           (unconfirmed_ ? wedgeAdvance(digits) : 0);
}

QSize BigFigure::sizeHint() const {
    return {qRound(widthAt(1)) + 2, qRound(QFontMetricsF(fontAt(1)).height())};
}

QSize BigFigure::minimumSizeHint() const {
    return {qRound(widthAt(kSmallest)) + 2, sizeHint().height()};
}

void BigFigure::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const Tokens tokens = tokensFor(palette());
    const double factor = std::clamp(width() / std::max(1.0, widthAt(1)), kSmallest, 1.0);
    const QFont digits = fontAt(factor);
    const QFontMetricsF metrics(digits);
    const double baseline = metrics.ascent();
    painter.setPen(tokens.ink);
    painter.setFont(digits);
    painter.drawText(QPointF(0, baseline), digits_);
    double x = metrics.horizontalAdvance(digits_);
    if (unconfirmed_) {
        paintWedge(painter, wedgeBehind({x, baseline}, metrics), tokens);
        x += wedgeAdvance(metrics);
    }
    painter.setFont(larger(pageTitleFont(font()), factor));
    painter.drawText(QPointF(x + kSpaceClose, baseline), unit_);
}

}  // namespace wm::ui
