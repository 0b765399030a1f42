// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "app/verb.h"

namespace wm::app {

/// The part of `import` that reads a notebook kept in a spreadsheet: reports what it makes of every line, and
/// with --accept writes what was agreed to, as one step.
Answer<void> importNotebook(const Call& call, const std::string& bytes);

}  // namespace wm::app
