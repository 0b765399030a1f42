// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>

class QPalette;
class QWidget;

namespace wm::ui {

/// The colours of the interface, the only place where they stand..
struct Tokens {
    QColor paper;     ///< the window
    QColor sheet;     ///< tables and inputs
    QColor ink;       ///< text and lines
    QColor pencil;    ///< secondary text: ink, thinned no further than 4.5:1 allows, on a selected row too
    QColor rule;      ///< hairlines
    QColor due;       ///< before the next event
    QColor over;      ///< overdue, stop
    QColor unmarked;  ///< no record
    QColor select;    ///< laid over what is selected; not a colour of a standing
};

Tokens lightTokens();
Tokens darkTokens();
/// Black on white: for prints, where only shape may speak.
Tokens printTokens();
/// The tokens that go with a palette made by applyTheme, so that a widget needs nothing handed down.
Tokens tokensFor(const QPalette& palette);

/// Has the widget write its words in that colour.
void inkWith(QWidget* widget, const QColor& color);

/// The colour at `alpha` (0 to 1) of its strength.
QColor thinned(QColor color, float alpha);

/// `over` laid on an opaque `under`.
QColor laidOver(const QColor& over, const QColor& under);

}  // namespace wm::ui
