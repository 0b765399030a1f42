// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/schema.h"

namespace wm::store::schema1 {

// What happened to machines and items.
std::vector<std::string> use() {
    return {
        R"(CREATE TABLE move (
    id       INTEGER PRIMARY KEY CHECK (id > 0),
    entered  INTEGER NOT NULL CHECK (entered > 0),
    item     INTEGER NOT NULL REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED,
    date     TEXT NOT NULL CHECK (date(date) IS date),
    part     TEXT NOT NULL CHECK (part IN ('before riding', 'riding', 'after riding')),
    kind     TEXT NOT NULL CHECK (kind IN ('fitted', 'removed', 'away', 'retired')),
    machine  INTEGER REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    parent   INTEGER REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED,
    position TEXT NOT NULL,
    note     TEXT NOT NULL,
    CHECK ((machine IS NOT NULL) + (parent IS NOT NULL) = (kind = 'fitted')),
    CHECK (parent IS NOT item),
    CHECK (kind = 'fitted' OR position = '')
) STRICT)",
        R"(CREATE TABLE setting (
    id      INTEGER PRIMARY KEY CHECK (id > 0),
    entered INTEGER NOT NULL CHECK (entered > 0),
    machine INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    item    INTEGER REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED,
    date    TEXT NOT NULL CHECK (date(date) IS date),
    name    TEXT NOT NULL CHECK (name <> ''),
    value   TEXT NOT NULL,
    note    TEXT NOT NULL
) STRICT)",
        R"(CREATE TABLE hour_reading (
    id       INTEGER PRIMARY KEY CHECK (id > 0),
    entered  INTEGER NOT NULL CHECK (entered > 0),
    machine  INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    date     TEXT NOT NULL CHECK (date(date) IS date),
    part     TEXT NOT NULL CHECK (part IN ('before riding', 'riding', 'after riding')),
    shown    INTEGER NOT NULL CHECK (shown >= 0),
    event    TEXT NOT NULL CHECK (event IN ('plain', 'replaced', 'reset', 'rolled over', 'stopped', 'resumed')),
    before   INTEGER CHECK (before >= 0),
    rolls_at INTEGER CHECK (rolls_at > 0),
    outing   INTEGER REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED,
    record   INTEGER REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    note     TEXT NOT NULL
) STRICT)",
        R"(CREATE TABLE distance_reading (
    id       INTEGER PRIMARY KEY CHECK (id > 0),
    entered  INTEGER NOT NULL CHECK (entered > 0),
    machine  INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    date     TEXT NOT NULL CHECK (date(date) IS date),
    part     TEXT NOT NULL CHECK (part IN ('before riding', 'riding', 'after riding')),
    shown    INTEGER NOT NULL CHECK (shown >= 0),
    event    TEXT NOT NULL CHECK (event IN ('plain', 'replaced', 'reset', 'rolled over', 'stopped', 'resumed')),
    before   INTEGER CHECK (before >= 0),
    rolls_at INTEGER CHECK (rolls_at > 0),
    outing   INTEGER REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED,
    record   INTEGER REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    note     TEXT NOT NULL
) STRICT)",
        R"(CREATE TABLE outing (
    id       INTEGER PRIMARY KEY CHECK (id > 0),
    entered  INTEGER NOT NULL CHECK (entered > 0),
    machine  INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    date     TEXT NOT NULL CHECK (date(date) IS date),
    rider    INTEGER REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED,
    event    INTEGER REFERENCES event (id) DEFERRABLE INITIALLY DEFERRED,
    kind     TEXT NOT NULL CHECK (kind IN ('practice', 'race', 'other')),
    hours    INTEGER CHECK (hours >= 0),
    distance INTEGER CHECK (distance >= 0),
    starts   INTEGER NOT NULL CHECK (starts >= 0),
    ground   TEXT NOT NULL CHECK (ground IN ('unstated', 'hard', 'dust', 'sand', 'mud', 'water')),
    pace     TEXT NOT NULL CHECK (pace IN ('unstated', 'race', 'hard', 'easy')),
    note     TEXT NOT NULL
) STRICT)",
        R"(CREATE TABLE wash (
    id       INTEGER PRIMARY KEY CHECK (id > 0),
    entered  INTEGER NOT NULL CHECK (entered > 0),
    machine  INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    date     TEXT NOT NULL CHECK (date(date) IS date),
    pressure INTEGER NOT NULL CHECK (pressure IN (0, 1)),
    outing   INTEGER REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED,
    note     TEXT NOT NULL
) STRICT)",
        R"(CREATE TABLE crash (
    id      INTEGER PRIMARY KEY CHECK (id > 0),
    entered INTEGER NOT NULL CHECK (entered > 0),
    machine INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    date    TEXT NOT NULL CHECK (date(date) IS date),
    outing  INTEGER REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED,
    note    TEXT NOT NULL
) STRICT)",
        // `fact` is the id of a row of any fact table; check() looks that it is there.
        R"(CREATE TABLE strike (
    id      INTEGER PRIMARY KEY CHECK (id > 0),
    entered INTEGER NOT NULL CHECK (entered > 0),
    fact    INTEGER NOT NULL UNIQUE CHECK (fact > 0),
    date    TEXT NOT NULL CHECK (date(date) IS date),
    reason  TEXT NOT NULL
) STRICT)",
    };
}

}  // namespace wm::store::schema1
