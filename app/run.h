// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace wm::app {

/// The whole program: a headless verb, or the window. Returns the exit code.
int run(int argc, char** argv);

}  // namespace wm::app
