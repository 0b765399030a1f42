// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/schema.h"

namespace wm::store::schema6 {

// What is remembered of a job from before the file. No row of until now has any.
std::vector<std::string> stated() {
    return {R"(CREATE TABLE record_stated (
    owner    INTEGER NOT NULL REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    counter  TEXT NOT NULL CHECK (counter IN ('hours', 'metres', 'outings', 'starts', 'washes', 'mud days', 'crashes', 'days', 'months')),
    low      INTEGER NOT NULL CHECK (low >= 0),
    best     INTEGER CHECK (best >= low),
    high     INTEGER CHECK (high >= low),
    up_to    TEXT NOT NULL CHECK (date(up_to) IS up_to),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID)"};
}

}  // namespace wm::store::schema6
