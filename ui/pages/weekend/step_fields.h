// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include "core/book/book.h"
#include "ui/fields/drafts.h"
#include "ui/fields/field_spec.h"

namespace wm::ui {

using StepDrafts = Drafts<weekend::StepVersion>;

/// Every field of an access step, in the order of the screen.
SheetSpec stepSheet();

/// What can be chosen, or is suggested, in the fields of an access step. An order may name what stands in the
/// draft and is not in the file yet: the step itself, its doings.
ChoicesOf stepChoices(std::shared_ptr<const book::Book> book, weekend::StepVersion base);

}  // namespace wm::ui
