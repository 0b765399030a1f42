// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/ledger/book.h"

namespace wm::ui {

/// What an entry is prefilled with: the machine that the last fact was about, or the first; and who last rode
/// or worked.
std::optional<MachineId> lastMachine(const ledger::Book& book);
std::optional<PersonId> lastRider(const ledger::Book& book, MachineId machine);
std::optional<PersonId> lastMechanic(const ledger::Book& book);

}  // namespace wm::ui
