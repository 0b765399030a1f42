// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/verbs/verb.h"

namespace wm::verbs {

/// Several verbs as one user action: each is checked on the book that those before it leave behind, all are
/// written or none, and undo takes them back in one go under `text`.
Verb together(std::string text, std::vector<Verb> verbs);

}  // namespace wm::verbs
