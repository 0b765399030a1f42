// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>

namespace wm::ui {

/// The colours of the interface, the only place where they stand. See the table in DEVELOPERS.md.
struct Tokens {
    QColor paper;
    QColor sheet;
    QColor ink;
    QColor pencil;
    QColor rule;
    QColor due;
    QColor over;
    QColor unmarked;
    QColor select;
};

Tokens lightTokens();
Tokens darkTokens();

}  // namespace wm::ui
