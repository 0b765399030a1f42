// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "core/verbs/verb.h"

namespace wm::verbs {

// People, machines, items, and the card of the file.

base::Result<picture::Change> nameGarage(const Pen& pen, std::string name,
                                         std::optional<calendar::Date> pinnedToday);
base::Result<picture::Change> savePerson(const Pen& pen, items::Person person);  ///< Duplicate
/// A machine that is new, or whose model or year was put right, takes over the joints that its model shares.
base::Result<picture::Change> saveMachine(const Pen& pen, items::Machine machine);  ///< Duplicate, OutOfOrder
base::Result<picture::Change> saveItem(const Pen& pen, items::Item item);           ///< OutOfOrder
/// A new item and its first fitting in one go.
base::Result<picture::Change> addItemFitted(const Pen& pen, items::Item item, items::Move move);
base::Result<picture::Change> moveItem(const Pen& pen, items::Move move);  ///< errors of Fittings::check
/// Takes off what sits at the position and fits `move.item` there: one verb, two moves.
base::Result<picture::Change> swapItem(const Pen& pen, items::Move move, items::MoveKind oldGoesTo);
base::Result<picture::Change> noteSetting(const Pen& pen, items::Setting setting);

}  // namespace wm::verbs
