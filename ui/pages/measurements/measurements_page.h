// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/pages/page.h"

namespace wm::ui {

Page* makeMeasurementsPage(const PageTools& tools, QWidget* parent);

}  // namespace wm::ui
