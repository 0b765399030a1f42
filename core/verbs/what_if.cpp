// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/verbs/what_if.h"

#include <utility>

namespace wm::verbs {

using base::Result;
using book::Book;
using picture::Ledger;

namespace {

// Ids that no row of the ledger bears: good for a copy that nobody keeps.
base::IdSource idsAside(const Ledger& ledger) {
    return [&ledger, next = std::int64_t{0}]() mutable {
        do
            ++next;
        while (ledger.knows(next));
        return next;
    };
}

}  // namespace

Result<WhatIf> whatIf(const Book& now, const Verb& verb, MachineId machine) {
    const auto change = verb(VerbContext{now, idsAside(now.ledger())});
    if (!change)
        return tl::unexpected<base::Error>{change.error()};
    auto copy = std::make_shared<const Ledger>(now.ledger().with(*change));
    auto after = std::make_shared<const Book>(std::move(copy), now.today(), now);
    auto moves = dueChange(now, *after, machine);
    return WhatIf{std::move(after), std::move(moves)};
}

}  // namespace wm::verbs
