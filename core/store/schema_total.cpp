// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/schema.h"

namespace wm::store::schema8 {

// They get their values in the same step (seal_total.h).
std::vector<std::string> total() {
    return {"ALTER TABLE file_state ADD COLUMN seals INTEGER NOT NULL DEFAULT 0 CHECK (seals >= 0)",
            "ALTER TABLE file_state ADD COLUMN seal_sum INTEGER NOT NULL DEFAULT 0"};
}

}  // namespace wm::store::schema8
