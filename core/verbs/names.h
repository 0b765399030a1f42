// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/phrase.h"
#include "core/base/result.h"
#include "core/book/book.h"
#include "core/book/book_checks.h"
#include "core/picture/checks.h"
#include "core/picture/entry.h"
#include "core/picture/shape.h"

namespace wm::verbs {

// The names that all verbs are written with. For the sources of this folder alone: no header includes it.

using base::Fault;
using base::phrase;
using base::Result;
using book::Book;
using book::BookChecks;
using picture::Change;
using picture::Checks;
using picture::Entry;
using picture::Ledger;
using picture::placeIn;
using picture::sameName;
using picture::shortened;

}  // namespace wm::verbs
