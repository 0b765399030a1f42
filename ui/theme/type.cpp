// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/theme/type.h"

#include <QFontDatabase>
#include <algorithm>

namespace wm::ui {

namespace {

QFont scaled(QFont font, double factor) {
    if (font.pointSizeF() > 0.0) {
        font.setPointSizeF(font.pointSizeF() * factor);
    } else {
        font.setPixelSize(std::max(1, qRound(font.pixelSize() * factor)));
    }
    return font;
}

}  // namespace

QFont pageTitleFont(const QFont& base) {
    return scaled(base, 1.5);
}

QFont sectionFont(const QFont& base) {
    QFont font = scaled(base, 1.15);
    font.setWeight(QFont::DemiBold);
    return font;
}

QFont figureFont(const QFont& base, FigureSize size) {
    const QString cockpit = QStringLiteral("B612 Mono");
    const QString face = QFontDatabase::hasFamily(cockpit)
                             ? cockpit
                             : QFontDatabase::systemFont(QFontDatabase::FixedFont).family();
    QFont font = base;
    font.setFamilies({face, base.family()});
    const double factor = size == FigureSize::Large ? 2.4 : size == FigureSize::Noted ? 1.3 : 1.0;
    return scaled(font, factor);
}

QFont noteFont(const QFont& base) {
    const double points = base.pointSizeF();
    return points > 0.0 ? scaled(base, std::max(0.85, std::min(1.0, 8.0 / points))) : scaled(base, 0.85);
}

}  // namespace wm::ui
