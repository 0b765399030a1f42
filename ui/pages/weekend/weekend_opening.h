// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "core/book/evening.h"
#include "ui/drawing/opening_picture.h"

namespace wm::ui {

/// What comes off in an evening as a tree: each step under the last of those it needs, the picked jobs at the
/// step that reaches them, and what lies open beside them. Several machines follow one another, each under
/// its name.
std::vector<OpeningStep> openingOf(const book::Book& book, const book::Evening& evening);

}  // namespace wm::ui
