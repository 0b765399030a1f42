// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/book/book.h"

namespace wm::ui {

/// How surely it holds: "nothing due before: 71 %", or "3 due now; no more due before: 71 %".
QString clearWords(const outlook::Chances& chances);

/// "first to go: linkage (60 %)"; empty if nothing goes.
QString firstToGoWords(const book::Book& book, const outlook::Chances& chances);

/// A warning beside the chances where the habit they rest on may be wrong; empty for a steady one.
QString trustWords(outlook::Trust trust);

}  // namespace wm::ui
