// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/book/book.h"
#include "ui/fields/field_spec.h"

namespace wm::ui {

/// Every field of a task, in the order of the screen: first what is changed often, then what is folded.
std::vector<GroupSpec> taskGroups();
SheetSpec taskSheet();

/// What can be chosen, or is suggested, in a field on a machine; `list` is empty for a field of the task
/// itself.
Choices choicesFor(const book::Book& book, MachineId machine, const std::string& list,
                   const std::string& field);

}  // namespace wm::ui
