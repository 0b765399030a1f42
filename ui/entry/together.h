// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <vector>

#include "core/store/store.h"

namespace wm::ui {

/// Several verbs as one user action: each is checked on the book that those before it leave behind, all are
/// written or none, and undo takes them back in one go under `text`.
store::Verb together(const QString& text, std::vector<store::Verb> verbs);

}  // namespace wm::ui
