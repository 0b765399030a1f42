// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>

class QElapsedTimer;

namespace wm::app {

/// Opens the window, on the file named first in `arguments` if there is one, and stays until it is closed.
/// With --verbose the loggers write. Needs a QApplication. Returns the exit code.
int runWindow(const QStringList& arguments, const QElapsedTimer& sinceStart);

}  // namespace wm::app
