// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/console.h"
#include "core/exchange/starter.h"

namespace wm::app {

/// The starter schedule of this name ("two-stroke motocross"), or of this file ("two-stroke-motocross"), out
/// of those that the program brings. Refused with the names that there are.
Answer<exchange::Starter> findStarter(const QString& name);

}  // namespace wm::app
