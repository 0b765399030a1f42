// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/book/book.h"

namespace wm::ui {

/// What an entry is prefilled with: the machine that the last fact was about, or the first; and who last rode
/// or worked.
std::optional<MachineId> lastMachine(const book::Book& book);
std::optional<PersonId> lastRider(const book::Book& book, MachineId machine);
std::optional<PersonId> lastMechanic(const book::Book& book);

}  // namespace wm::ui
