// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/book/book.h"

namespace wm::book {

/// A task whose place or figures on the due list are not the same in two books. `before` is empty if it comes
/// onto the list, `after` if it leaves it. The pointers inside are into the two books' ledgers.
struct DueMove {
    std::optional<DueLine> before{};
    std::optional<DueLine> after{};
};

/// True if a reader of the due list would see another line: standing, the event it falls due before, the day
/// it falls due, what is left of the governing limit, what brought it on, the class of its consequence. The
/// words of a task (name, source, kit, steps ...) are no part of that.
bool readsOtherwise(const DueLine& before, const DueLine& after);

/// The lines of a machine that read otherwise in `after`, those of `before` first, each list in its own
/// order. Both books should stand on the same day.
std::vector<DueMove> dueChange(const Book& before, const Book& after, MachineId machine);

}  // namespace wm::book
