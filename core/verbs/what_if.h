// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <vector>

#include "core/book/due_change.h"
#include "core/verbs/verb.h"

namespace wm::verbs {

/// What a verb would do to the due list of a machine, worked out on a copy of the ledger: nothing is written.
struct WhatIf {
    std::shared_ptr<const book::Book> after{};  ///< keeps what the moves point into
    std::vector<book::DueMove> moves{};
};
/// Errors: those of the verb.
base::Result<WhatIf> whatIf(const book::Book& now, const Verb& verb, MachineId machine);

}  // namespace wm::verbs
