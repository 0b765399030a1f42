// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "core/picture/ledger.h"

namespace wm::picture {

/// A row that no verb of ours can have written, and what is wrong with it.
struct Unsound {
    std::string_view table;
    std::int64_t row = 0;
    base::Error error;
};

/// What everything that reckons relies on, asked of rows from a file: figures, days and the lengths of texts
/// within their bounds, each reference to something that is there (Inconsistent if not), no part inside
/// itself and no access step that needs itself in the end (Cycle). Not whether all of it makes sense: that is
/// adoptAll's. The first fault, or nothing. The rows stay as they are.
std::optional<Unsound> firstUnsound(Rows& rows);

/// The bounds alone, of rows that are to be written: what they don't hold of could not be read again.
std::optional<base::Error> beyondBounds(std::vector<Row>& rows);

}  // namespace wm::picture
