// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/schema.h"

namespace wm::store::schema6 {

// Between two printed limits the limits themselves are good; a single one is a wear limit, and what has worn
// down to it has reached it. Whoever knows it better says so.
std::vector<std::string> values() {
    return {R"(ALTER TABLE task_version_measures ADD COLUMN job TEXT NOT NULL DEFAULT '')",
            R"(ALTER TABLE task_version_measures ADD COLUMN least_good INTEGER NOT NULL DEFAULT 0
    CHECK (least_good IN (0, 1)))",
            R"(ALTER TABLE task_version_measures ADD COLUMN most_good INTEGER NOT NULL DEFAULT 0
    CHECK (most_good IN (0, 1)))",
            R"(UPDATE task_version_measures SET least_good = 1, most_good = 1
    WHERE least IS NOT NULL AND most IS NOT NULL)"};
}

}  // namespace wm::store::schema6
