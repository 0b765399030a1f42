// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/schema.h"

namespace wm::store::schema1 {

// Jobs done, found, put off and handed out. A task is named by the id that all its versions share; there is
// no table to refer to, so check() looks that one is there.
std::vector<std::string> upkeep() {
    return {
        R"(CREATE TABLE snag (
    id          INTEGER PRIMARY KEY CHECK (id > 0),
    entered     INTEGER NOT NULL CHECK (entered > 0),
    machine     INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    item        INTEGER REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED,
    task        INTEGER,
    date        TEXT NOT NULL CHECK (date(date) IS date),
    what        TEXT NOT NULL,
    wish        TEXT NOT NULL CHECK (wish IN ('do it', 'watch')),
    consequence TEXT NOT NULL CHECK (consequence IN ('safety evident', 'safety hidden', 'ends a race', 'costs money', 'hidden wear'))
) STRICT)",
        R"(CREATE TABLE issued_sheet (
    id      INTEGER PRIMARY KEY CHECK (id > 0),
    entered INTEGER NOT NULL CHECK (entered > 0),
    number  INTEGER NOT NULL CHECK (number > 0),
    machine INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    date    TEXT NOT NULL CHECK (date(date) IS date),
    target  TEXT NOT NULL,
    note    TEXT NOT NULL
) STRICT)",
        R"(CREATE TABLE issued_sheet_jobs (
    owner    INTEGER NOT NULL REFERENCES issued_sheet (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    task     INTEGER,
    snag     INTEGER REFERENCES snag (id) DEFERRABLE INITIALLY DEFERRED,
    PRIMARY KEY (owner, position),
    CHECK ((task IS NULL) <> (snag IS NULL))
) STRICT, WITHOUT ROWID)",
        R"(CREATE TABLE record (
    id          INTEGER PRIMARY KEY CHECK (id > 0),
    entered     INTEGER NOT NULL CHECK (entered > 0),
    machine     INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    item        INTEGER REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED,
    task        INTEGER,
    version     INTEGER REFERENCES task_version (id) DEFERRABLE INITIALLY DEFERRED,
    code        TEXT NOT NULL,
    snag        INTEGER REFERENCES snag (id) DEFERRABLE INITIALLY DEFERRED,
    kind        TEXT NOT NULL CHECK (kind IN ('done', 'looked fine', 'baseline')),
    date        TEXT NOT NULL CHECK (date(date) IS date),
    part        TEXT NOT NULL CHECK (part IN ('before riding', 'riding', 'after riding')),
    meter       INTEGER CHECK (meter >= 0),
    stated_low  INTEGER CHECK (stated_low >= 0),
    stated_best INTEGER CHECK (stated_best >= 0),
    stated_high INTEGER CHECK (stated_high >= 0),
    by_person   INTEGER REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED,
    what        TEXT NOT NULL,
    data        TEXT NOT NULL,
    minutes     INTEGER CHECK (minutes >= 0),
    sheet       INTEGER REFERENCES issued_sheet (id) DEFERRABLE INITIALLY DEFERRED,
    extra_done  INTEGER NOT NULL CHECK (extra_done IN (0, 1)),
    note        TEXT NOT NULL
) STRICT)",
        R"(CREATE TABLE record_uses (
    owner    INTEGER NOT NULL REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    line     INTEGER NOT NULL REFERENCES stock_line (id) DEFERRABLE INITIALLY DEFERRED,
    lot      INTEGER REFERENCES lot (id) DEFERRABLE INITIALLY DEFERRED,
    amount   INTEGER NOT NULL CHECK (amount >= 0),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID)",
        R"(CREATE TABLE record_measured (
    owner    INTEGER NOT NULL REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    name     TEXT NOT NULL CHECK (name <> ''),
    unit     TEXT NOT NULL,
    value    TEXT NOT NULL CHECK (value NOT GLOB '*[^-0-9.]*' AND value GLOB '*[0-9]'),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID)",
        R"(CREATE TABLE record_steps (
    owner    INTEGER NOT NULL REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    code     TEXT NOT NULL CHECK (code <> ''),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID)",
        R"(CREATE TABLE snag_end (
    id      INTEGER PRIMARY KEY CHECK (id > 0),
    entered INTEGER NOT NULL CHECK (entered > 0),
    snag    INTEGER NOT NULL REFERENCES snag (id) DEFERRABLE INITIALLY DEFERRED,
    date    TEXT NOT NULL CHECK (date(date) IS date),
    record  INTEGER REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    how     TEXT NOT NULL
) STRICT)",
        R"(CREATE TABLE deferral (
    id          INTEGER PRIMARY KEY CHECK (id > 0),
    entered     INTEGER NOT NULL CHECK (entered > 0),
    machine     INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    task        INTEGER,
    snag        INTEGER REFERENCES snag (id) DEFERRABLE INITIALLY DEFERRED,
    date        TEXT NOT NULL CHECK (date(date) IS date),
    until_date  TEXT CHECK (date(until_date) IS until_date),
    until_hours INTEGER CHECK (until_hours >= 0),
    reason      TEXT NOT NULL,
    by_person   INTEGER REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED,
    CHECK ((task IS NULL) <> (snag IS NULL))
) STRICT)",
        R"(CREATE TABLE follow_up_answer (
    id      INTEGER PRIMARY KEY CHECK (id > 0),
    entered INTEGER NOT NULL CHECK (entered > 0),
    machine INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    origin  INTEGER NOT NULL CHECK (origin > 0),
    what    TEXT NOT NULL,
    date    TEXT NOT NULL CHECK (date(date) IS date),
    fine    INTEGER NOT NULL CHECK (fine IN (0, 1)),
    record  INTEGER REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    note    TEXT NOT NULL
) STRICT)",
        R"(CREATE TABLE joint_mark (
    id        INTEGER PRIMARY KEY CHECK (id > 0),
    entered   INTEGER NOT NULL CHECK (entered > 0),
    joint     INTEGER NOT NULL CHECK (joint > 0),
    date      TEXT NOT NULL CHECK (date(date) IS date),
    kind      TEXT NOT NULL CHECK (kind IN ('loosened', 'confirmed', 'found fine', 'found moved')),
    record    INTEGER REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    by_person INTEGER REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED,
    torque    TEXT CHECK (torque NOT GLOB '*[^0-9.]*' AND torque GLOB '*[0-9]'),
    unit      TEXT NOT NULL CHECK (unit IN ('N·m', 'lbf·ft', 'lbf·in', 'kgf·m', 'kgf·cm')),
    note      TEXT NOT NULL
) STRICT)",
        // Taking a record back looks for what refers to it.
        R"(CREATE INDEX joint_mark_record ON joint_mark (record))",
        R"(CREATE INDEX snag_end_record ON snag_end (record))",
    };
}

// The shelf.
std::vector<std::string> shelf() {
    return {
        R"(CREATE TABLE stock_line (
    id          INTEGER PRIMARY KEY CHECK (id > 0),
    name        TEXT NOT NULL CHECK (name <> ''),
    part_number TEXT NOT NULL,
    supersedes  TEXT NOT NULL,
    fits        TEXT NOT NULL,
    unit        TEXT NOT NULL CHECK (unit IN ('piece', 'ml', 'g')),
    pack_amount INTEGER NOT NULL CHECK (pack_amount > 0),
    pack_price  INTEGER CHECK (pack_price >= 0),
    lead_days   INTEGER CHECK (lead_days >= 0),
    place       TEXT NOT NULL,
    keep        INTEGER NOT NULL CHECK (keep >= 0),
    opened_days INTEGER CHECK (opened_days >= 0),
    active      INTEGER NOT NULL CHECK (active IN (0, 1)),
    note        TEXT NOT NULL
) STRICT)",
        R"(CREATE TABLE lot (
    id          INTEGER PRIMARY KEY CHECK (id > 0),
    line        INTEGER NOT NULL REFERENCES stock_line (id) DEFERRABLE INITIALLY DEFERRED,
    label       TEXT NOT NULL,
    received    TEXT NOT NULL CHECK (date(received) IS received),
    opened      TEXT CHECK (date(opened) IS opened),
    best_before TEXT CHECK (date(best_before) IS best_before)
) STRICT)",
        R"(CREATE TABLE stock_order (
    id       INTEGER PRIMARY KEY CHECK (id > 0),
    entered  INTEGER NOT NULL CHECK (entered > 0),
    line     INTEGER NOT NULL REFERENCES stock_line (id) DEFERRABLE INITIALLY DEFERRED,
    date     TEXT NOT NULL CHECK (date(date) IS date),
    amount   INTEGER NOT NULL CHECK (amount > 0),
    expected TEXT CHECK (date(expected) IS expected),
    note     TEXT NOT NULL
) STRICT)",
        R"(CREATE TABLE stock_move (
    id          INTEGER PRIMARY KEY CHECK (id > 0),
    entered     INTEGER NOT NULL CHECK (entered > 0),
    line        INTEGER NOT NULL REFERENCES stock_line (id) DEFERRABLE INITIALLY DEFERRED,
    lot         INTEGER REFERENCES lot (id) DEFERRABLE INITIALLY DEFERRED,
    date        TEXT NOT NULL CHECK (date(date) IS date),
    amount      INTEGER NOT NULL CHECK (amount <> 0),
    why         TEXT NOT NULL CHECK (why IN ('bought', 'used', 'counted', 'lost')),
    record      INTEGER REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    stock_order INTEGER REFERENCES stock_order (id) DEFERRABLE INITIALLY DEFERRED,
    price       INTEGER CHECK (price >= 0),
    note        TEXT NOT NULL
) STRICT)",  R"(CREATE INDEX stock_move_record ON stock_move (record))",
    };
}

}  // namespace wm::store::schema1
