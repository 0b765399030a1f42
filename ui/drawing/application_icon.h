// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QIcon>

namespace wm::ui {

/// The mark in hand on a tile of paper: for windows, the task bar and the start menu.
QIcon applicationIcon();

}  // namespace wm::ui
