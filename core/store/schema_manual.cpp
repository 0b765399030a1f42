// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/schema.h"

namespace wm::store::schema4 {

// Until now an amount counted as checked together with the interval of its task. Nobody ever said that of it:
// it starts unconfirmed.
std::vector<std::string> manualPages() {
    return {
        R"(ALTER TABLE task_version_kit ADD COLUMN source TEXT NOT NULL DEFAULT '')",
        R"(ALTER TABLE task_version_kit ADD COLUMN page TEXT NOT NULL DEFAULT '')",
        R"(ALTER TABLE task_version_kit ADD COLUMN confirmed INTEGER NOT NULL DEFAULT 0 CHECK (confirmed IN (0, 1)))",
        R"(ALTER TABLE task_version_measures ADD COLUMN page TEXT NOT NULL DEFAULT '')",
    };
}

}  // namespace wm::store::schema4
