// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAccessible>

class QWidget;

namespace wm::ui {

/// What a widget that paints itself is called by a screen reader; of itself Qt would say "a part of a
/// window".
void speakAs(QWidget* widget, QAccessible::Role role);

}  // namespace wm::ui
