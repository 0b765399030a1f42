// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/ledger/book.h"

namespace wm::ui {

/// How surely the rest holds: "3 due now; nothing more due before the flag: 71 %".
QString clearWords(const outlook::Chances& chances);

/// "first to go: linkage (60 %)"; empty if nothing goes.
QString firstToGoWords(const ledger::Book& book, const outlook::Chances& chances);

/// What the figures can't know; empty if there is nothing to say.
QString trustWords(outlook::Trust trust);

}  // namespace wm::ui
