// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/schema.h"
#include "core/weekend/freed.h"

namespace wm::store::schema6 {

// What the steps of the starters free is known by their codes; of a step of one's own it has to be said.
std::vector<std::string> moves() {
    std::vector<std::string> statements{
        R"(ALTER TABLE move ADD COLUMN told TEXT NOT NULL DEFAULT 'unasked'
    CHECK (told IN ('unasked', 'work', 'as it was')))",
        R"(ALTER TABLE move ADD COLUMN back_on TEXT CHECK (date(back_on) IS back_on))",
        R"(ALTER TABLE move ADD COLUMN record INTEGER REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED)",
        R"(ALTER TABLE task_version ADD COLUMN sends_out INTEGER NOT NULL DEFAULT 0 CHECK (sends_out IN (0, 1)))",
        R"(CREATE TABLE step_version_frees (
    owner    INTEGER NOT NULL REFERENCES step_version (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    code     TEXT NOT NULL CHECK (code <> ''),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID)"};
    for (const weekend::FreedByCode& each : weekend::freedByCode())
        statements.push_back("INSERT INTO step_version_frees SELECT id, " + std::to_string(each.place) +
                             ", '" + std::string(each.position) + "' FROM step_version WHERE code = '" +
                             std::string(each.step) + "'");
    return statements;
}

}  // namespace wm::store::schema6
