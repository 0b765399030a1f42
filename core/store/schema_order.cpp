// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/schema.h"

namespace wm::store::schema9 {

namespace {

std::string doingsOf(const std::string& owner) {
    return "CREATE TABLE " + owner + "_doings (\n    owner    INTEGER NOT NULL REFERENCES " + owner +
           R"( (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    code     TEXT NOT NULL CHECK (code <> ''),
    what     TEXT NOT NULL CHECK (what <> ''),
    minutes  INTEGER NOT NULL CHECK (minutes >= 0),
    comes    TEXT NOT NULL CHECK (comes IN ('before', 'between', 'after')),
    runs     INTEGER NOT NULL CHECK (runs IN (0, 1)),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID)";
}

std::string edgesOf(const std::string& owner) {
    return "CREATE TABLE " + owner + "_edges (\n    owner        INTEGER NOT NULL REFERENCES " + owner +
           R"( (id) DEFERRABLE INITIALLY DEFERRED,
    position     INTEGER NOT NULL CHECK (position >= 0),
    earlier      TEXT NOT NULL CHECK (earlier IN ('crack', 'off', 'do', 'job', 'on', 'torque')),
    earlier_code TEXT NOT NULL CHECK (earlier_code <> ''),
    later        TEXT NOT NULL CHECK (later IN ('crack', 'off', 'do', 'job', 'on', 'torque')),
    later_code   TEXT NOT NULL CHECK (later_code <> ''),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID)";
}

// Of an older file it is not known which words are a starter's. Taken for them is the first version of what
// a machine with a schedule has since it came, or of what names no other source.
std::vector<std::string> fromStarter(const std::string& table, const std::string& id) {
    const std::string trigger = table + "_is_never_changed";
    return {"ALTER TABLE " + table + R"( ADD COLUMN from_starter INTEGER NOT NULL DEFAULT 0
    CHECK (from_starter IN (0, 1)))",
            "DROP TRIGGER " + trigger,
            "UPDATE " + table + R"( AS v SET from_starter = 1
    WHERE NOT confirmed
      AND NOT EXISTS (SELECT 1 FROM )" +
                table + " AS o WHERE o." + id + " = v." + id +
                R"( AND o.entered < v.entered)
      AND EXISTS (SELECT 1 FROM machine AS m WHERE m.id = v.machine AND m.starter <> ''
                  AND (m.since = v.valid_from OR v.source = 'common practice')))",
            "CREATE TRIGGER " + trigger + " BEFORE UPDATE ON \"" + table +
                R"(" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END)"};
}

}  // namespace

// No step and no task of until now says anything of it: their plans stay as they were.
std::vector<std::string> order() {
    std::vector<std::string> all{doingsOf("step_version"),
                                 edgesOf("step_version"),
                                 doingsOf("task_version"),
                                 edgesOf("task_version"),
                                 R"(ALTER TABLE step_version ADD COLUMN body_state TEXT NOT NULL DEFAULT 'any'
    CHECK (body_state IN ('any', 'cold', 'warm')))",
                                 R"(ALTER TABLE task_version ADD COLUMN comes_last INTEGER NOT NULL DEFAULT 0
    CHECK (comes_last IN (0, 1)))",
                                 R"(ALTER TABLE garage ADD COLUMN cool_minutes INTEGER NOT NULL DEFAULT 240
    CHECK (cool_minutes BETWEEN 0 AND 1440))",
                                 R"(ALTER TABLE task_version ADD COLUMN short_name TEXT NOT NULL DEFAULT '')",
                                 R"(ALTER TABLE joint_version ADD COLUMN held TEXT NOT NULL DEFAULT '')"};
    for (const auto& [table, id] : {std::pair("task_version", "task"), std::pair("step_version", "step"),
                                    std::pair("joint_version", "joint")})
        for (std::string& statement : fromStarter(table, id))
            all.push_back(std::move(statement));
    return all;
}

}  // namespace wm::store::schema9
