// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "core/base/ids.h"
#include "core/base/result.h"
#include "core/book/book.h"

namespace wm::verbs {

// Every user action is one of these. A verb checks what it is given against the book and answers with the
// change to write, or says what is wrong and where; it writes nothing itself. Drafts carry typed text as it
// was typed only for names and notes; numbers and dates are parsed where they are typed (core/units,
// core/calendar).
//
// Common errors: Unknown (a machine, item, task that is not there), InFuture (a fact after book.today()),
// BeforeItsTime (before the machine or item existed), Empty / NotText / TooLong (names and notes).

/// `rows[...].entered` are numbered from book.ledger().nextEntered(); ids come from `newId`.
struct VerbContext {
    const book::Book& book;
    base::IdSource newId;
};

/// A verb with all that it is given.
using Verb = std::function<base::Result<picture::Change>(const VerbContext&)>;

// save...: a row without an id (value 0) is new, and the verb gives it one; else the row of this id is
// overwritten (Unknown if it is not there).
// Definitions (task, step, joint): a version without a stable id (value 0) is a new one and is given one;
// with an id it is a new version from `validFrom` on. A `validFrom` left at its default means today. An empty
// code is made from the name.

}  // namespace wm::verbs
