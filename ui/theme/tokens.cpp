// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/theme/tokens.h"

#include <QPalette>
#include <QWidget>

namespace wm::ui {

QColor thinned(QColor color, float alpha) {
    color.setAlphaF(alpha);
    return color;
}

Tokens lightTokens() {
    const QColor ink("#20262A");
    return {QColor("#F5F3EE"),   QColor("#FFFFFF"),   ink,
            thinned(ink, 0.70F), thinned(ink, 0.14F), QColor("#8F5015"),
            QColor("#9E2B25"),   QColor("#47589A"),   thinned(ink, 0.10F)};
}

Tokens darkTokens() {
    const QColor ink("#E8E6E1");
    return {QColor("#1B1F22"),   QColor("#262B2F"),   ink,
            thinned(ink, 0.66F), thinned(ink, 0.16F), QColor("#E2A15C"),
            QColor("#F28F82"),   QColor("#9AA8DC"),   thinned(ink, 0.10F)};
}

Tokens printTokens() {
    const QColor black(Qt::black);
    const QColor white(Qt::white);
    return {white, white, black, black, thinned(black, 0.45F), black, black, black, thinned(black, 0.0F)};
}

Tokens tokensFor(const QPalette& palette) {
    const bool dark = palette.color(QPalette::Window).lightnessF() < 0.5F;
    return dark ? darkTokens() : lightTokens();
}

QColor laidOver(const QColor& over, const QColor& under) {
    const float alpha = over.alphaF();
    const auto mixed = [alpha](float top, float bottom) { return top * alpha + bottom * (1.0F - alpha); };
    return QColor::fromRgbF(mixed(over.redF(), under.redF()), mixed(over.greenF(), under.greenF()),
                            mixed(over.blueF(), under.blueF()));
}

void inkWith(QWidget* widget, const QColor& color) {
    QPalette palette = widget->palette();
    palette.setColor(QPalette::WindowText, color);
    widget->setPalette(palette);
}

}  // namespace wm::ui
