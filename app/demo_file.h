// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>

#include "app/open_garage.h"

namespace wm::app {

/// The invented garage that the program brings along, said anew line by line.
Answer<picture::Ledger> demoLedger();

/// Makes a file with that garage in it. It stays on the garage's own day, whatever the calendar says.
Answer<Garage> createDemo(const QString& path);

/// The demo file of the window, made when it is first asked for; nothing if it can't be made.
std::optional<QString> demoFile();

}  // namespace wm::app
