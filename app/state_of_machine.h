// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTextStream>
#include <nlohmann/json_fwd.hpp>

#include "core/book/book.h"

namespace wm::app {

/// May it be ridden at all? Line by line, each after two blanks.
void printState(QTextStream& out, const book::Book& book, MachineId machine);
/// The same as `machine_state` of resources/headless.schema.json.
nlohmann::ordered_json stateJson(const book::Book& book, MachineId machine);

}  // namespace wm::app
