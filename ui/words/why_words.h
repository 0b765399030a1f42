// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/explain/why.h"
#include "ui/words/why.h"

namespace wm::ui {

/// A derivation in words, for the window and the headless verb alike.
WhyNode whyTree(const explain::Step& step, calendar::Date today);

}  // namespace wm::ui
