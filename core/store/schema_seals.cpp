// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/schema.h"

namespace wm::store::schema5 {

// The rows that are there get theirs in the same step (seal.h).
std::vector<std::string> seals() {
    return {R"(CREATE TABLE row_seal (
    of_table TEXT NOT NULL,
    id       INTEGER NOT NULL,
    digest   INTEGER NOT NULL,
    PRIMARY KEY (of_table, id)
) STRICT, WITHOUT ROWID)"};
}

}  // namespace wm::store::schema5
