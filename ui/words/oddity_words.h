// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>

#include "core/book/oddities.h"

namespace wm::ui {

/// "Heron 250, Wed 6 May: the meter went from 32.0 to 7012.0, more than the days between can hold."
QString oddityWords(const book::Oddity& oddity, calendar::Date today);
/// What a file says that no verb would have taken, a line each.
QStringList oddityLines(const book::Book& book);

}  // namespace wm::ui
