// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/theme/tokens.h"

namespace wm::ui {

Tokens lightTokens() {
    const QColor ink("#20262A");
    const auto inkAt = [&](float alpha) { return QColor::fromRgbF(ink.redF(), ink.greenF(), ink.blueF(), alpha); };
    return {QColor("#F5F3EE"), QColor("#FFFFFF"), ink,          inkAt(0.62F),  inkAt(0.14F), QColor("#9C5A1A"),
            QColor("#9E2B25"), QColor("#47589A"), inkAt(0.10F)};
}

Tokens darkTokens() {
    const QColor ink("#E8E6E1");
    const auto inkAt = [&](float alpha) { return QColor::fromRgbF(ink.redF(), ink.greenF(), ink.blueF(), alpha); };
    return {QColor("#1B1F22"), QColor("#262B2F"), ink,          inkAt(0.62F),  inkAt(0.16F), QColor("#E2A15C"),
            QColor("#EE7B6C"), QColor("#9AA8DC"), inkAt(0.10F)};
}

}  // namespace wm::ui
