// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/base/result.h"

namespace wm::ui {

/// One sentence for a refusal: what is wrong, where, and what to do. Plain text, never markup: what the user
/// typed stands in it as it was typed, so show it with Qt::PlainText.
QString wordsFor(const base::Error& error);

/// Text from outside in quotation marks on one line, cut to what fits in a sentence; control and direction
/// characters are shown as U+FFFD, so that they can't disturb the words around it.
QString quoted(const QString& text);

}  // namespace wm::ui
