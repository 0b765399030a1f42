// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include "core/book/book.h"
#include "ui/fields/field_spec.h"

namespace wm::ui {

/// Every field of a task, in the order of the screen: first what is changed often, then what is folded.
std::vector<GroupSpec> taskGroups();
SheetSpec taskSheet();

/// What can be chosen, or is suggested, in the fields of a task. An order may name what stands in the draft
/// and is not in the file yet: the task itself, its doings.
ChoicesOf taskChoices(const std::shared_ptr<const book::Book>& book, const upkeep::TaskVersion& base);

}  // namespace wm::ui
