// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "core/verbs/verb.h"

namespace wm::verbs {

// People, machines, items, and the card of the file.

base::Result<picture::Change> nameGarage(const VerbContext& context, std::string name,
                                         std::optional<calendar::Date> pinnedToday);
base::Result<picture::Change> savePerson(const VerbContext& context, items::Person person);  ///< Duplicate
/// A machine that is new, or whose model or year was put right, takes over the joints that its model shares.
base::Result<picture::Change> saveMachine(const VerbContext& context,
                                          items::Machine machine);  ///< Duplicate, OutOfOrder
base::Result<picture::Change> saveItem(const VerbContext& context, items::Item item);  ///< OutOfOrder
/// A new item and its first fitting in one go. Errors as moveItem.
base::Result<picture::Change> addItemFitted(const VerbContext& context, items::Item item, items::Move move);
base::Result<picture::Change> noteSetting(const VerbContext& context, items::Setting setting);

}  // namespace wm::verbs
