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

/// What the figures can't know; empty if there is nothing to say.
QString trustWords(outlook::Trust trust);

}  // namespace wm::ui
