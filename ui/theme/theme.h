// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPalette>
#include <QString>
#include <cstdint>

#include "ui/theme/tokens.h"

class QApplication;

namespace wm::ui {

enum class ThemeChoice : std::uint8_t { Light, Dark, System };

/// The tokens that a choice means here and now; System follows the desktop's own palette.
Tokens tokensOf(ThemeChoice choice);

QPalette paletteFrom(const Tokens& tokens);
/// The style sheet, for what a palette can't express: hairlines instead of boxes, calm buttons, thin scroll
/// bars, visible focus.
QString styleSheetFrom(const Tokens& tokens);

/// Dresses the whole application. May be called again at any time, e.g. when the choice changes.
/// A button that a page wants most is its default button; a title carries the property "role" with "title",
/// "section" or "note".
void applyTheme(QApplication& application, ThemeChoice choice);

}  // namespace wm::ui
