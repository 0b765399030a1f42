// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/inside.h"
#include "core/store/schema.h"

namespace wm::store::schema7 {

// Where the joints of the starters sit is known by their codes; of a joint of one's own it has to be said.
std::vector<std::string> inside() {
    std::vector<std::string> statements{R"(ALTER TABLE joint_version ADD COLUMN position TEXT)",
                                        R"(ALTER TABLE joint_mark ADD COLUMN item INTEGER
    REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED)",
                                        R"(DROP TRIGGER joint_version_is_never_changed)"};
    for (const fastening::SitsIn& each : fastening::sitsInByCode())
        statements.push_back("UPDATE joint_version SET position = '" + std::string(each.position) +
                             "' WHERE code = '" + std::string(each.joint) + "'");
    statements.emplace_back(
        R"(CREATE TRIGGER joint_version_is_never_changed BEFORE UPDATE ON "joint_version" )"
        R"(BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END)");
    return statements;
}

}  // namespace wm::store::schema7
