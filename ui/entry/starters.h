// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/exchange/starter.h"
#include "core/store/store.h"

namespace wm::ui {

/// The starter schedules that the program brings.
std::vector<exchange::Starter> starters();

/// Gives a machine that is there by then, under this name, the tasks of a starter.
store::Verb adoptStarter(const std::string& machine, exchange::Starter starter);

/// The same for a machine that began without one: its card says so from now on.
store::Verb beginSchedule(const std::string& machine, exchange::Starter starter);

}  // namespace wm::ui
