// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/book/book.h"

namespace wm::book {

/// A life that ends before the machine's next event is over.
struct Expiry {
    std::string item{};
    std::string task{};   ///< the renewal, or the task with the life limit
    bool isOver = false;  ///< already now
    std::optional<calendar::Date> likely{};
    std::optional<outlook::EventAhead> event{};  ///< the next one of the machine
};

/// Would `item`, and what sits in it, last through the next event of the machine that carries it today? Asked
/// of the book as it would be with the item fitted. Only tasks that renew the item or have a life limit
/// count; a life that nobody knows is none that ends.
std::vector<Expiry> expiriesOf(const Book& book, ItemId item);

}  // namespace wm::book
