// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/book/book.h"

namespace wm::ui {

/// How surely it holds: "nothing due before: 71 %", or "3 due now; no more due before: 71 %".
QString clearWords(const outlook::Chances& chances);

/// The second half of it: how surely nothing else falls due, or why nobody can say.
QString restWords(const outlook::Chances& chances);

/// The same with all that is not due yet, listed or not: "6 due now; no more due before: 12 %".
QString onTheWayWords(const outlook::Chances& chances);

/// "6 due now, 1 may be over, 4 before the flag": as many as are listed so; empty if there are none.
QString countedWords(const outlook::Chances& chances);

/// "4 picked, 5 left to do" of what is counted, or the chance with them done; empty if none is picked.
QString pickedWords(const outlook::Chances& chances);

/// "first to go: linkage"; empty if nothing goes.
QString firstToGoWords(const book::Book& book, const outlook::Chances& chances);

/// The same of all that is not due yet, listed or not.
QString firstOnTheWayWords(const book::Book& book, const outlook::Chances& chances);

/// A warning beside the chances where the habit they rest on may be wrong; empty for a steady one.
QString trustWords(outlook::Trust trust);

}  // namespace wm::ui
