// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/schema.h"

namespace wm::store::schema1 {

// Cards and plans: rows that a verb may overwrite.
std::vector<std::string> cards() {
    return {
        R"(CREATE TABLE garage (
    id           INTEGER PRIMARY KEY CHECK (id = 1),
    name         TEXT NOT NULL,
    pinned_today TEXT CHECK (date(pinned_today) IS pinned_today)
) STRICT)",
        R"(CREATE TABLE person (
    id   INTEGER PRIMARY KEY CHECK (id > 0),
    name TEXT NOT NULL CHECK (name <> '')
) STRICT)",
        R"(CREATE TABLE machine (
    id                     INTEGER PRIMARY KEY CHECK (id > 0),
    name                   TEXT NOT NULL CHECK (name <> ''),
    maker                  TEXT NOT NULL,
    model                  TEXT NOT NULL,
    year                   INTEGER CHECK (year BETWEEN 1800 AND 2199),
    starter                TEXT NOT NULL,
    since                  TEXT NOT NULL CHECK (date(since) IS since),
    started_new            INTEGER NOT NULL CHECK (started_new IN (0, 1)),
    past_low               INTEGER NOT NULL CHECK (past_low >= 0),
    past_best              INTEGER NOT NULL CHECK (past_best >= past_low),
    past_high              INTEGER CHECK (past_high >= past_best),
    meter_counts_transport INTEGER NOT NULL CHECK (meter_counts_transport IN (0, 1)),
    gone_on                TEXT CHECK (date(gone_on) IS gone_on),
    note                   TEXT NOT NULL
) STRICT)",
        R"(CREATE TABLE item (
    id          INTEGER PRIMARY KEY CHECK (id > 0),
    name        TEXT NOT NULL CHECK (name <> ''),
    kind        TEXT NOT NULL,
    maker       TEXT NOT NULL,
    part_number TEXT NOT NULL,
    since       TEXT NOT NULL CHECK (date(since) IS since),
    started_new INTEGER NOT NULL CHECK (started_new IN (0, 1)),
    past_low    INTEGER NOT NULL CHECK (past_low >= 0),
    past_best   INTEGER NOT NULL CHECK (past_best >= past_low),
    past_high   INTEGER CHECK (past_high >= past_best),
    note        TEXT NOT NULL
) STRICT)",
        R"(CREATE TABLE event (
    id         INTEGER PRIMARY KEY CHECK (id > 0),
    name       TEXT NOT NULL CHECK (name <> ''),
    place      TEXT NOT NULL,
    kind       TEXT NOT NULL CHECK (kind IN ('race', 'practice')),
    first_day  TEXT NOT NULL CHECK (date(first_day) IS first_day),
    last_day   TEXT NOT NULL CHECK (date(last_day) IS last_day AND last_day >= first_day),
    called_off INTEGER NOT NULL CHECK (called_off IN (0, 1)),
    note       TEXT NOT NULL
) STRICT)",
        R"(CREATE TABLE event_entries (
    owner    INTEGER NOT NULL REFERENCES event (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    machine  INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    rider    INTEGER REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED,
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID)",
        R"(CREATE TABLE work_window (
    id        INTEGER PRIMARY KEY CHECK (id > 0),
    date      TEXT NOT NULL CHECK (date(date) IS date),
    starts_at INTEGER NOT NULL CHECK (starts_at BETWEEN 0 AND 1440),
    ends_at   INTEGER NOT NULL CHECK (ends_at > starts_at),
    hands     INTEGER NOT NULL CHECK (hands >= 1),
    active    INTEGER NOT NULL CHECK (active IN (0, 1))
) STRICT)",
        R"(CREATE TABLE pick (
    id      INTEGER PRIMARY KEY CHECK (id > 0),
    machine INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    task    INTEGER,
    snag    INTEGER REFERENCES snag (id) DEFERRABLE INITIALLY DEFERRED,
    picked  INTEGER NOT NULL CHECK (picked IN (0, 1)),
    CHECK ((task IS NULL) <> (snag IS NULL))
) STRICT)",
    };
}

}  // namespace wm::store::schema1
