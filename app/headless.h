// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>

#include "app/console.h"

namespace wm::app {

/// True if these arguments (without the program's name) are for a verb, for --help or --version, or are
/// wrong; false if they open the window.
bool isHeadless(const QStringList& arguments);

/// The arguments without --verbose, which the window takes as well as every verb.
QStringList withoutVerbose(const QStringList& arguments);

/// Runs a verb, or answers --help and --version. Errors are one line on `console.err`, "witnessmark: ...".
/// Needs a QCoreApplication; the verb `sheet` needs a QGuiApplication. Returns the exit code.
int runHeadless(const QStringList& arguments, Console& console);

}  // namespace wm::app
