// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <map>
#include <tuple>

#include "tests/ui/harness/everything.h"

namespace wm::ui {

/// What is wrong with a surface, and where. The three together are its key in tests/data/window/known.txt.
struct Finding {
    QString check{};    ///< "cut-name": a word of kChecks
    QString surface{};  ///< Surface::name
    QString where{};    ///< the name of the widget, "[2]" behind it for a column of a table

    friend bool operator<(const Finding& a, const Finding& b) {
        return std::tie(a.check, a.surface, a.where) < std::tie(b.check, b.surface, b.where);
    }
};
/// Each with what was seen there, the first time.
using Findings = std::map<Finding, QString>;

/// Off the window, or off its part that is seen with no way to roll it there; squeezed to nothing.
Findings offTheWindow(const Surface& surface);
/// Elided or cut off: "cut-figure" where a figure is, "cut-name" any other words.
Findings cutTexts(const Surface& surface);
/// Controls without a name for who can't see them ("nameless"), or that say they are something else ("role").
Findings unspoken(const Surface& surface);
/// Text of the user's, told by `mark` at its head, that would be read as markup or lose its "&".
Findings markup(const Surface& surface, const QString& mark);
/// Controls that the mouse can't get at, and keys named or taken by a surface that nothing clickable bears.
Findings notByMouse(const Surface& surface);
/// Controls that neither Tab nor a key of their own gets at; a place that Tab does not leave.
Findings notByKeys(const Surface& surface);

/// How a widget is called in a key: its own name, or that of the nearest one around it and its class.
QString nameOf(const QWidget& widget);
bool isFigure(const QString& words);

}  // namespace wm::ui
