// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>

namespace wm::app {

/// Opens the window, on the file named first in `arguments` if there is one, and stays until it is closed.
/// Needs a QApplication. Returns the exit code.
int runWindow(const QStringList& arguments);

}  // namespace wm::app
