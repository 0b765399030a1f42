// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/schema.h"

namespace wm::store::schema3 {

namespace {

const char* const kTool = R"(CREATE TABLE tool (
    id         INTEGER PRIMARY KEY CHECK (id > 0),
    name       TEXT NOT NULL CHECK (name <> ''),
    drive      TEXT NOT NULL,
    type       TEXT NOT NULL CHECK (type IN ('unstated', 'I A', 'I B', 'I C', 'I D', 'I E', 'II A', 'II B', 'II C', 'II D', 'II E', 'II F', 'II G')),
    low        TEXT NOT NULL CHECK (low NOT GLOB '*[^0-9.]*' AND low GLOB '*[0-9]'),
    high       TEXT NOT NULL CHECK (high NOT GLOB '*[^0-9.]*' AND high GLOB '*[0-9]'),
    unit       TEXT NOT NULL CHECK (unit IN ('N·m', 'lbf·ft', 'lbf·in', 'kgf·m', 'kgf·cm')),
    resolution TEXT CHECK (resolution NOT GLOB '*[^0-9.]*' AND resolution GLOB '*[0-9]'),
    length     INTEGER CHECK (length > 0),
    months     INTEGER CHECK (months > 0),
    cycles     INTEGER CHECK (cycles > 0),
    active     INTEGER NOT NULL CHECK (active IN (0, 1)),
    note       TEXT NOT NULL
) STRICT)";

const char* const kCalibration = R"(CREATE TABLE calibration (
    id           INTEGER PRIMARY KEY CHECK (id > 0),
    entered      INTEGER NOT NULL CHECK (entered > 0),
    tool         INTEGER NOT NULL REFERENCES tool (id) DEFERRABLE INITIALLY DEFERRED,
    date         TEXT NOT NULL CHECK (date(date) IS date),
    found_within INTEGER NOT NULL CHECK (found_within IN (0, 1)),
    left_within  INTEGER NOT NULL CHECK (left_within IN (0, 1)),
    worst        TEXT CHECK (worst NOT GLOB '*[^-0-9.]*' AND worst GLOB '*[0-9]'),
    by_whom      TEXT NOT NULL,
    months       INTEGER CHECK (months > 0),
    cycles       INTEGER CHECK (cycles > 0),
    note         TEXT NOT NULL
) STRICT)";

// The words of a CHECK can't be added to: the table is written anew.
const char* const kJointMark = R"(CREATE TABLE joint_mark_3 (
    id            INTEGER PRIMARY KEY CHECK (id > 0),
    entered       INTEGER NOT NULL CHECK (entered > 0),
    joint         INTEGER NOT NULL CHECK (joint > 0),
    date          TEXT NOT NULL CHECK (date(date) IS date),
    kind          TEXT NOT NULL CHECK (kind IN ('loosened', 'confirmed', 'found fine', 'found moved', 'mark broken', 'ridden open')),
    record        INTEGER REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    by_person     INTEGER REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED,
    torque        TEXT CHECK (torque NOT GLOB '*[^0-9.]*' AND torque GLOB '*[0-9]'),
    unit          TEXT NOT NULL CHECK (unit IN ('N·m', 'lbf·ft', 'lbf·in', 'kgf·m', 'kgf·cm')),
    note          TEXT NOT NULL,
    tool          INTEGER REFERENCES tool (id) DEFERRABLE INITIALLY DEFERRED,
    moved_count   INTEGER CHECK (moved_count > 0),
    moved_degrees INTEGER CHECK (moved_degrees > 0),
    outing        INTEGER REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED
) STRICT)";

}  // namespace

std::vector<std::string> drawer() {
    return {
        kTool,
        kCalibration,
        R"(ALTER TABLE joint_version ADD COLUMN shared_from INTEGER CHECK (shared_from BETWEEN 1800 AND 2199))",
        R"(ALTER TABLE joint_version ADD COLUMN shared_to INTEGER CHECK (shared_to BETWEEN 1800 AND 2199))",
        kJointMark,
        R"(INSERT INTO joint_mark_3
SELECT id, entered, joint, date, kind, record, by_person, torque, unit, note, NULL, NULL, NULL, NULL FROM joint_mark)",
        // Its index and triggers go with it; the words of its notes stay in the search.
        R"(DROP TABLE joint_mark)",
        R"(ALTER TABLE joint_mark_3 RENAME TO joint_mark)",
        R"(CREATE INDEX joint_mark_record ON joint_mark (record))",
        R"(CREATE INDEX joint_mark_outing ON joint_mark (outing))",
        R"(CREATE TRIGGER joint_mark_into_search AFTER INSERT ON joint_mark WHEN trim(new.note) <> '' BEGIN
INSERT INTO search (rowid, text) VALUES (new.id, new.note); END)",
        R"(CREATE TRIGGER joint_mark_out_of_search AFTER DELETE ON joint_mark BEGIN
DELETE FROM search WHERE rowid = old.id; END)",
        R"(CREATE TRIGGER joint_mark_is_never_changed BEFORE UPDATE ON joint_mark BEGIN
SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END)",
        R"(CREATE TRIGGER calibration_into_search AFTER INSERT ON calibration
WHEN trim(new.by_whom || ' ' || new.note) <> '' BEGIN
INSERT INTO search (rowid, text) VALUES (new.id, new.by_whom || ' ' || new.note); END)",
        R"(CREATE TRIGGER calibration_out_of_search AFTER DELETE ON calibration BEGIN
DELETE FROM search WHERE rowid = old.id; END)",
        R"(CREATE TRIGGER calibration_is_never_changed BEFORE UPDATE ON calibration BEGIN
SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END)",
    };
}

}  // namespace wm::store::schema3
