CREATE TABLE file_state (
    one           INTEGER PRIMARY KEY CHECK (one = 1),
    revision      INTEGER NOT NULL CHECK (revision >= 0),
    oldest_reader INTEGER NOT NULL CHECK (oldest_reader > 0),
    needs_program TEXT NOT NULL
) STRICT;

INSERT INTO file_state VALUES (1, 0, 1, '');

CREATE TABLE verb_log (
    revision   INTEGER PRIMARY KEY CHECK (revision > 0),
    what       TEXT NOT NULL CHECK (what IN ('done', 'undone', 'redone')),
    of_verb    INTEGER NOT NULL REFERENCES verb_log (revision),
    text       TEXT NOT NULL,
    written_at TEXT NOT NULL
) STRICT;

CREATE TABLE undo_change (
    verb    INTEGER PRIMARY KEY REFERENCES verb_log (revision),
    day     TEXT NOT NULL CHECK (date(day) IS day),
    done    INTEGER NOT NULL CHECK (done IN (0, 1)),
    changes BLOB NOT NULL
) STRICT;

CREATE TABLE garage (
    id           INTEGER PRIMARY KEY CHECK (id = 1),
    name         TEXT NOT NULL,
    pinned_today TEXT CHECK (date(pinned_today) IS pinned_today)
) STRICT;

CREATE TABLE person (
    id   INTEGER PRIMARY KEY CHECK (id > 0),
    name TEXT NOT NULL CHECK (name <> '')
) STRICT;

CREATE TABLE machine (
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
) STRICT;

CREATE TABLE item (
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
) STRICT;

CREATE TABLE event (
    id         INTEGER PRIMARY KEY CHECK (id > 0),
    name       TEXT NOT NULL CHECK (name <> ''),
    place      TEXT NOT NULL,
    kind       TEXT NOT NULL CHECK (kind IN ('race', 'practice')),
    first_day  TEXT NOT NULL CHECK (date(first_day) IS first_day),
    last_day   TEXT NOT NULL CHECK (date(last_day) IS last_day AND last_day >= first_day),
    called_off INTEGER NOT NULL CHECK (called_off IN (0, 1)),
    note       TEXT NOT NULL
) STRICT;

CREATE TABLE event_entries (
    owner    INTEGER NOT NULL REFERENCES event (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    machine  INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    rider    INTEGER REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED,
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE work_window (
    id        INTEGER PRIMARY KEY CHECK (id > 0),
    date      TEXT NOT NULL CHECK (date(date) IS date),
    starts_at INTEGER NOT NULL CHECK (starts_at BETWEEN 0 AND 1440),
    ends_at   INTEGER NOT NULL CHECK (ends_at > starts_at),
    hands     INTEGER NOT NULL CHECK (hands >= 1),
    active    INTEGER NOT NULL CHECK (active IN (0, 1))
) STRICT;

CREATE TABLE pick (
    id      INTEGER PRIMARY KEY CHECK (id > 0),
    machine INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    task    INTEGER,
    snag    INTEGER REFERENCES snag (id) DEFERRABLE INITIALLY DEFERRED,
    picked  INTEGER NOT NULL CHECK (picked IN (0, 1)),
    CHECK ((task IS NULL) <> (snag IS NULL))
) STRICT;

CREATE TABLE task_version (
    id          INTEGER PRIMARY KEY CHECK (id > 0),
    entered     INTEGER NOT NULL CHECK (entered > 0),
    task        INTEGER NOT NULL CHECK (task > 0),
    machine     INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    valid_from  TEXT NOT NULL CHECK (date(valid_from) IS valid_from),
    code        TEXT NOT NULL CHECK (code <> ''),
    name        TEXT NOT NULL CHECK (name <> ''),
    position    TEXT NOT NULL,
    consequence TEXT NOT NULL CHECK (consequence IN ('safety evident', 'safety hidden', 'ends a race', 'costs money', 'hidden wear')),
    combine     TEXT NOT NULL CHECK (combine IN ('first', 'last')),
    count_from  TEXT NOT NULL CHECK (count_from IN ('completion', 'fixed marks')),
    every_nth   INTEGER NOT NULL CHECK (every_nth >= 0),
    extra       TEXT NOT NULL,
    nth_of      TEXT NOT NULL,
    nth         INTEGER NOT NULL CHECK (nth >= 0),
    minutes     INTEGER NOT NULL CHECK (minutes >= 0),
    tools       TEXT NOT NULL,
    how_to      TEXT NOT NULL,
    body_state  TEXT NOT NULL CHECK (body_state IN ('any', 'cold', 'warm')),
    renews      INTEGER NOT NULL CHECK (renews IN (0, 1)),
    felt        INTEGER NOT NULL CHECK (felt IN (0, 1)),
    source      TEXT NOT NULL,
    page        TEXT NOT NULL,
    confirmed   INTEGER NOT NULL CHECK (confirmed IN (0, 1)),
    active      INTEGER NOT NULL CHECK (active IN (0, 1))
) STRICT;

CREATE TABLE task_version_limits (
    owner     INTEGER NOT NULL REFERENCES task_version (id) DEFERRABLE INITIALLY DEFERRED,
    position  INTEGER NOT NULL CHECK (position >= 0),
    counter   TEXT NOT NULL CHECK (counter IN ('hours', 'metres', 'outings', 'starts', 'washes', 'mud days', 'crashes', 'days', 'months')),
    every     INTEGER NOT NULL CHECK (every >= 0),
    first     INTEGER CHECK (first >= 0),
    allowance INTEGER NOT NULL CHECK (allowance >= 0),
    hard      INTEGER NOT NULL CHECK (hard IN (0, 1)),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE task_version_triggers (
    owner     INTEGER NOT NULL REFERENCES task_version (id) DEFERRABLE INITIALLY DEFERRED,
    position  INTEGER NOT NULL CHECK (position >= 0),
    happening TEXT NOT NULL CHECK (happening IN ('wash', 'pressure wash', 'mud day', 'crash', 'before race', 'job')),
    code      TEXT NOT NULL,
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE task_version_kit (
    owner          INTEGER NOT NULL REFERENCES task_version (id) DEFERRABLE INITIALLY DEFERRED,
    position       INTEGER NOT NULL CHECK (position >= 0),
    what           TEXT NOT NULL,
    line           INTEGER REFERENCES stock_line (id) DEFERRABLE INITIALLY DEFERRED,
    amount         INTEGER NOT NULL CHECK (amount >= 0),
    unit           TEXT NOT NULL CHECK (unit IN ('piece', 'ml', 'g')),
    only_if_needed INTEGER NOT NULL CHECK (only_if_needed IN (0, 1)),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE task_version_measures (
    owner     INTEGER NOT NULL REFERENCES task_version (id) DEFERRABLE INITIALLY DEFERRED,
    position  INTEGER NOT NULL CHECK (position >= 0),
    name      TEXT NOT NULL CHECK (name <> ''),
    unit      TEXT NOT NULL,
    least     TEXT CHECK (least NOT GLOB '*[^-0-9.]*' AND least GLOB '*[0-9]'),
    most      TEXT CHECK (most NOT GLOB '*[^-0-9.]*' AND most GLOB '*[0-9]'),
    source    TEXT NOT NULL,
    confirmed INTEGER NOT NULL CHECK (confirmed IN (0, 1)),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE task_version_cautions (
    owner    INTEGER NOT NULL REFERENCES task_version (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    hazard   TEXT NOT NULL CHECK (hazard IN ('gas-charged', 'spring', 'fuel', 'solvent', 'brake fluid', 'hot parts', 'fibre', 'lifting', 'pinch', 'exhaust', 'electrical', 'compressed air', 'used fluids', 'first ride', 'brakes', 'steering', 'wheels')),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE task_version_steps (
    owner    INTEGER NOT NULL REFERENCES task_version (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    code     TEXT NOT NULL CHECK (code <> ''),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE task_version_joints (
    owner    INTEGER NOT NULL REFERENCES task_version (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    code     TEXT NOT NULL CHECK (code <> ''),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE task_version_follow_ups (
    owner    INTEGER NOT NULL REFERENCES task_version (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    what     TEXT NOT NULL,
    code     TEXT NOT NULL,
    due      TEXT NOT NULL CHECK (due IN ('at once', 'next outing', 'after hours', 'after days')),
    amount   INTEGER NOT NULL CHECK (amount >= 0),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE step_version (
    id                INTEGER PRIMARY KEY CHECK (id > 0),
    entered           INTEGER NOT NULL CHECK (entered > 0),
    step              INTEGER NOT NULL CHECK (step > 0),
    machine           INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    valid_from        TEXT NOT NULL CHECK (date(valid_from) IS valid_from),
    code              TEXT NOT NULL CHECK (code <> ''),
    name              TEXT NOT NULL CHECK (name <> ''),
    off_minutes       INTEGER NOT NULL CHECK (off_minutes >= 0),
    on_minutes        INTEGER NOT NULL CHECK (on_minutes >= 0),
    break_loose       TEXT NOT NULL,
    refit             TEXT NOT NULL,
    leaves_unrideable INTEGER NOT NULL CHECK (leaves_unrideable IN (0, 1)),
    source            TEXT NOT NULL,
    confirmed         INTEGER NOT NULL CHECK (confirmed IN (0, 1)),
    active            INTEGER NOT NULL CHECK (active IN (0, 1))
) STRICT;

CREATE TABLE step_version_needs (
    owner            INTEGER NOT NULL REFERENCES step_version (id) DEFERRABLE INITIALLY DEFERRED,
    position         INTEGER NOT NULL CHECK (position >= 0),
    code             TEXT NOT NULL CHECK (code <> ''),
    only_some_models INTEGER NOT NULL CHECK (only_some_models IN (0, 1)),
    applies          INTEGER NOT NULL CHECK (applies IN (0, 1)),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE step_version_loose_before (
    owner    INTEGER NOT NULL REFERENCES step_version (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    code     TEXT NOT NULL CHECK (code <> ''),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE step_version_joints (
    owner    INTEGER NOT NULL REFERENCES step_version (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    code     TEXT NOT NULL CHECK (code <> ''),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE step_version_follow_ups (
    owner    INTEGER NOT NULL REFERENCES step_version (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    what     TEXT NOT NULL,
    code     TEXT NOT NULL,
    due      TEXT NOT NULL CHECK (due IN ('at once', 'next outing', 'after hours', 'after days')),
    amount   INTEGER NOT NULL CHECK (amount >= 0),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE step_version_cautions (
    owner    INTEGER NOT NULL REFERENCES step_version (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    hazard   TEXT NOT NULL CHECK (hazard IN ('gas-charged', 'spring', 'fuel', 'solvent', 'brake fluid', 'hot parts', 'fibre', 'lifting', 'pinch', 'exhaust', 'electrical', 'compressed air', 'used fluids', 'first ride', 'brakes', 'steering', 'wheels')),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE joint_version (
    id            INTEGER PRIMARY KEY CHECK (id > 0),
    entered       INTEGER NOT NULL CHECK (entered > 0),
    joint         INTEGER NOT NULL CHECK (joint > 0),
    machine       INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    valid_from    TEXT NOT NULL CHECK (date(valid_from) IS valid_from),
    code          TEXT NOT NULL CHECK (code <> ''),
    name          TEXT NOT NULL CHECK (name <> ''),
    kind          TEXT NOT NULL CHECK (kind IN ('other', 'brake', 'axle', 'pinch', 'steering', 'peg', 'pivot', 'linkage', 'shock', 'swingarm', 'wheel', 'spoke', 'suspension', 'engine mount', 'sprocket', 'engine', 'cover')),
    thread        TEXT NOT NULL,
    count         INTEGER NOT NULL CHECK (count >= 1),
    torque        TEXT CHECK (torque NOT GLOB '*[^0-9.]*' AND torque GLOB '*[0-9]'),
    torque_high   TEXT CHECK (torque_high NOT GLOB '*[^0-9.]*' AND torque_high GLOB '*[0-9]'),
    unit          TEXT NOT NULL CHECK (unit IN ('N·m', 'lbf·ft', 'lbf·in', 'kgf·m', 'kgf·cm')),
    stages        TEXT NOT NULL,
    condition     TEXT NOT NULL,
    locking       TEXT NOT NULL,
    renew         TEXT NOT NULL,
    left_hand     INTEGER NOT NULL CHECK (left_hand IN (0, 1)),
    sequence      TEXT NOT NULL CHECK (sequence IN ('any', 'criss-cross', 'spiral', 'every n-th', 'listed')),
    sequence_step INTEGER NOT NULL CHECK (sequence_step >= 0),
    sequence_note TEXT NOT NULL,
    source        TEXT NOT NULL,
    page          TEXT NOT NULL,
    confirmed     INTEGER NOT NULL CHECK (confirmed IN (0, 1)),
    typed_by      TEXT NOT NULL,
    checked_by    TEXT NOT NULL,
    active        INTEGER NOT NULL CHECK (active IN (0, 1)),
    CHECK (torque IS NOT NULL OR torque_high IS NULL)
) STRICT;

CREATE TABLE move (
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
) STRICT;

CREATE TABLE setting (
    id      INTEGER PRIMARY KEY CHECK (id > 0),
    entered INTEGER NOT NULL CHECK (entered > 0),
    machine INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    item    INTEGER REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED,
    date    TEXT NOT NULL CHECK (date(date) IS date),
    name    TEXT NOT NULL CHECK (name <> ''),
    value   TEXT NOT NULL,
    note    TEXT NOT NULL
) STRICT;

CREATE TABLE hour_reading (
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
) STRICT;

CREATE TABLE distance_reading (
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
) STRICT;

CREATE TABLE outing (
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
) STRICT;

CREATE TABLE wash (
    id       INTEGER PRIMARY KEY CHECK (id > 0),
    entered  INTEGER NOT NULL CHECK (entered > 0),
    machine  INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    date     TEXT NOT NULL CHECK (date(date) IS date),
    pressure INTEGER NOT NULL CHECK (pressure IN (0, 1)),
    outing   INTEGER REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED,
    note     TEXT NOT NULL
) STRICT;

CREATE TABLE crash (
    id      INTEGER PRIMARY KEY CHECK (id > 0),
    entered INTEGER NOT NULL CHECK (entered > 0),
    machine INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    date    TEXT NOT NULL CHECK (date(date) IS date),
    outing  INTEGER REFERENCES outing (id) DEFERRABLE INITIALLY DEFERRED,
    note    TEXT NOT NULL
) STRICT;

CREATE TABLE strike (
    id      INTEGER PRIMARY KEY CHECK (id > 0),
    entered INTEGER NOT NULL CHECK (entered > 0),
    fact    INTEGER NOT NULL UNIQUE CHECK (fact > 0),
    date    TEXT NOT NULL CHECK (date(date) IS date),
    reason  TEXT NOT NULL
) STRICT;

CREATE TABLE snag (
    id          INTEGER PRIMARY KEY CHECK (id > 0),
    entered     INTEGER NOT NULL CHECK (entered > 0),
    machine     INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    item        INTEGER REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED,
    task        INTEGER,
    date        TEXT NOT NULL CHECK (date(date) IS date),
    what        TEXT NOT NULL,
    wish        TEXT NOT NULL CHECK (wish IN ('do it', 'watch')),
    consequence TEXT NOT NULL CHECK (consequence IN ('safety evident', 'safety hidden', 'ends a race', 'costs money', 'hidden wear'))
) STRICT;

CREATE TABLE issued_sheet (
    id      INTEGER PRIMARY KEY CHECK (id > 0),
    entered INTEGER NOT NULL CHECK (entered > 0),
    number  INTEGER NOT NULL CHECK (number > 0),
    machine INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    date    TEXT NOT NULL CHECK (date(date) IS date),
    target  TEXT NOT NULL,
    note    TEXT NOT NULL
) STRICT;

CREATE TABLE issued_sheet_jobs (
    owner    INTEGER NOT NULL REFERENCES issued_sheet (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    task     INTEGER,
    snag     INTEGER REFERENCES snag (id) DEFERRABLE INITIALLY DEFERRED,
    PRIMARY KEY (owner, position),
    CHECK ((task IS NULL) <> (snag IS NULL))
) STRICT, WITHOUT ROWID;

CREATE TABLE record (
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
) STRICT;

CREATE TABLE record_uses (
    owner    INTEGER NOT NULL REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    line     INTEGER NOT NULL REFERENCES stock_line (id) DEFERRABLE INITIALLY DEFERRED,
    lot      INTEGER REFERENCES lot (id) DEFERRABLE INITIALLY DEFERRED,
    amount   INTEGER NOT NULL CHECK (amount >= 0),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE record_measured (
    owner    INTEGER NOT NULL REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    name     TEXT NOT NULL CHECK (name <> ''),
    unit     TEXT NOT NULL,
    value    TEXT NOT NULL CHECK (value NOT GLOB '*[^-0-9.]*' AND value GLOB '*[0-9]'),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE record_steps (
    owner    INTEGER NOT NULL REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    code     TEXT NOT NULL CHECK (code <> ''),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE snag_end (
    id      INTEGER PRIMARY KEY CHECK (id > 0),
    entered INTEGER NOT NULL CHECK (entered > 0),
    snag    INTEGER NOT NULL REFERENCES snag (id) DEFERRABLE INITIALLY DEFERRED,
    date    TEXT NOT NULL CHECK (date(date) IS date),
    record  INTEGER REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    how     TEXT NOT NULL
) STRICT;

CREATE TABLE deferral (
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
) STRICT;

CREATE TABLE follow_up_answer (
    id      INTEGER PRIMARY KEY CHECK (id > 0),
    entered INTEGER NOT NULL CHECK (entered > 0),
    machine INTEGER NOT NULL REFERENCES machine (id) DEFERRABLE INITIALLY DEFERRED,
    origin  INTEGER NOT NULL CHECK (origin > 0),
    what    TEXT NOT NULL,
    date    TEXT NOT NULL CHECK (date(date) IS date),
    fine    INTEGER NOT NULL CHECK (fine IN (0, 1)),
    record  INTEGER REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    note    TEXT NOT NULL
) STRICT;

CREATE TABLE joint_mark (
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
) STRICT;

CREATE INDEX joint_mark_record ON joint_mark (record);

CREATE INDEX snag_end_record ON snag_end (record);

CREATE TABLE stock_line (
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
) STRICT;

CREATE TABLE lot (
    id          INTEGER PRIMARY KEY CHECK (id > 0),
    line        INTEGER NOT NULL REFERENCES stock_line (id) DEFERRABLE INITIALLY DEFERRED,
    label       TEXT NOT NULL,
    received    TEXT NOT NULL CHECK (date(received) IS received),
    opened      TEXT CHECK (date(opened) IS opened),
    best_before TEXT CHECK (date(best_before) IS best_before)
) STRICT;

CREATE TABLE stock_order (
    id       INTEGER PRIMARY KEY CHECK (id > 0),
    entered  INTEGER NOT NULL CHECK (entered > 0),
    line     INTEGER NOT NULL REFERENCES stock_line (id) DEFERRABLE INITIALLY DEFERRED,
    date     TEXT NOT NULL CHECK (date(date) IS date),
    amount   INTEGER NOT NULL CHECK (amount > 0),
    expected TEXT CHECK (date(expected) IS expected),
    note     TEXT NOT NULL
) STRICT;

CREATE TABLE stock_move (
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
) STRICT;

CREATE INDEX stock_move_record ON stock_move (record);

CREATE VIRTUAL TABLE search USING fts5(text, tokenize = "unicode61 remove_diacritics 2");

CREATE TRIGGER move_into_search AFTER INSERT ON move WHEN trim(new.position || ' ' || new.note) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.position || ' ' || new.note); END;

CREATE TRIGGER move_out_of_search AFTER DELETE ON move BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER setting_into_search AFTER INSERT ON setting WHEN trim(new.name || ' ' || new.value || ' ' || new.note) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.name || ' ' || new.value || ' ' || new.note); END;

CREATE TRIGGER setting_out_of_search AFTER DELETE ON setting BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER hour_reading_into_search AFTER INSERT ON hour_reading WHEN trim(new.note) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.note); END;

CREATE TRIGGER hour_reading_out_of_search AFTER DELETE ON hour_reading BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER distance_reading_into_search AFTER INSERT ON distance_reading WHEN trim(new.note) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.note); END;

CREATE TRIGGER distance_reading_out_of_search AFTER DELETE ON distance_reading BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER outing_into_search AFTER INSERT ON outing WHEN trim(new.note) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.note); END;

CREATE TRIGGER outing_out_of_search AFTER DELETE ON outing BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER wash_into_search AFTER INSERT ON wash WHEN trim(new.note) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.note); END;

CREATE TRIGGER wash_out_of_search AFTER DELETE ON wash BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER crash_into_search AFTER INSERT ON crash WHEN trim(new.note) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.note); END;

CREATE TRIGGER crash_out_of_search AFTER DELETE ON crash BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER snag_into_search AFTER INSERT ON snag WHEN trim(new.what) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.what); END;

CREATE TRIGGER snag_out_of_search AFTER DELETE ON snag BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER issued_sheet_into_search AFTER INSERT ON issued_sheet WHEN trim(new.target || ' ' || new.note) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.target || ' ' || new.note); END;

CREATE TRIGGER issued_sheet_out_of_search AFTER DELETE ON issued_sheet BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER record_into_search AFTER INSERT ON record WHEN trim(new.code || ' ' || new.what || ' ' || new.data || ' ' || new.note) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.code || ' ' || new.what || ' ' || new.data || ' ' || new.note); END;

CREATE TRIGGER record_out_of_search AFTER DELETE ON record BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER snag_end_into_search AFTER INSERT ON snag_end WHEN trim(new.how) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.how); END;

CREATE TRIGGER snag_end_out_of_search AFTER DELETE ON snag_end BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER deferral_into_search AFTER INSERT ON deferral WHEN trim(new.reason) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.reason); END;

CREATE TRIGGER deferral_out_of_search AFTER DELETE ON deferral BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER follow_up_answer_into_search AFTER INSERT ON follow_up_answer WHEN trim(new.what || ' ' || new.note) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.what || ' ' || new.note); END;

CREATE TRIGGER follow_up_answer_out_of_search AFTER DELETE ON follow_up_answer BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER joint_mark_into_search AFTER INSERT ON joint_mark WHEN trim(new.note) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.note); END;

CREATE TRIGGER joint_mark_out_of_search AFTER DELETE ON joint_mark BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER stock_order_into_search AFTER INSERT ON stock_order WHEN trim(new.note) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.note); END;

CREATE TRIGGER stock_order_out_of_search AFTER DELETE ON stock_order BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER stock_move_into_search AFTER INSERT ON stock_move WHEN trim(new.note) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.note); END;

CREATE TRIGGER stock_move_out_of_search AFTER DELETE ON stock_move BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER strike_into_search AFTER INSERT ON strike WHEN trim(new.reason) <> '' BEGIN INSERT INTO search (rowid, text) VALUES (new.id, new.reason); END;

CREATE TRIGGER strike_out_of_search AFTER DELETE ON strike BEGIN DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER move_is_never_changed BEFORE UPDATE ON "move" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER setting_is_never_changed BEFORE UPDATE ON "setting" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER hour_reading_is_never_changed BEFORE UPDATE ON "hour_reading" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER distance_reading_is_never_changed BEFORE UPDATE ON "distance_reading" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER outing_is_never_changed BEFORE UPDATE ON "outing" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER wash_is_never_changed BEFORE UPDATE ON "wash" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER crash_is_never_changed BEFORE UPDATE ON "crash" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER task_version_is_never_changed BEFORE UPDATE ON "task_version" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER step_version_is_never_changed BEFORE UPDATE ON "step_version" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER joint_version_is_never_changed BEFORE UPDATE ON "joint_version" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER snag_is_never_changed BEFORE UPDATE ON "snag" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER issued_sheet_is_never_changed BEFORE UPDATE ON "issued_sheet" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER record_is_never_changed BEFORE UPDATE ON "record" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER snag_end_is_never_changed BEFORE UPDATE ON "snag_end" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER deferral_is_never_changed BEFORE UPDATE ON "deferral" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER follow_up_answer_is_never_changed BEFORE UPDATE ON "follow_up_answer" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER joint_mark_is_never_changed BEFORE UPDATE ON "joint_mark" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER stock_order_is_never_changed BEFORE UPDATE ON "stock_order" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER stock_move_is_never_changed BEFORE UPDATE ON "stock_move" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER strike_is_never_changed BEFORE UPDATE ON "strike" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TABLE task_version_weights (
    owner    INTEGER NOT NULL REFERENCES task_version (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    ground   TEXT CHECK (ground IN ('unstated', 'hard', 'dust', 'sand', 'mud', 'water')),
    pace     TEXT CHECK (pace IN ('unstated', 'race', 'hard', 'easy')),
    permille INTEGER NOT NULL CHECK (permille > 0),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE tool (
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
) STRICT;

CREATE TABLE calibration (
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
) STRICT;

ALTER TABLE joint_version ADD COLUMN shared_from INTEGER CHECK (shared_from BETWEEN 1800 AND 2199);

ALTER TABLE joint_version ADD COLUMN shared_to INTEGER CHECK (shared_to BETWEEN 1800 AND 2199);

CREATE TABLE joint_mark_3 (
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
) STRICT;

INSERT INTO joint_mark_3
SELECT id, entered, joint, date, kind, record, by_person, torque, unit, note, NULL, NULL, NULL, NULL FROM joint_mark;

DROP TABLE joint_mark;

ALTER TABLE joint_mark_3 RENAME TO joint_mark;

CREATE INDEX joint_mark_record ON joint_mark (record);

CREATE INDEX joint_mark_outing ON joint_mark (outing);

CREATE TRIGGER joint_mark_into_search AFTER INSERT ON joint_mark WHEN trim(new.note) <> '' BEGIN
INSERT INTO search (rowid, text) VALUES (new.id, new.note); END;

CREATE TRIGGER joint_mark_out_of_search AFTER DELETE ON joint_mark BEGIN
DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER joint_mark_is_never_changed BEFORE UPDATE ON joint_mark BEGIN
SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

CREATE TRIGGER calibration_into_search AFTER INSERT ON calibration
WHEN trim(new.by_whom || ' ' || new.note) <> '' BEGIN
INSERT INTO search (rowid, text) VALUES (new.id, new.by_whom || ' ' || new.note); END;

CREATE TRIGGER calibration_out_of_search AFTER DELETE ON calibration BEGIN
DELETE FROM search WHERE rowid = old.id; END;

CREATE TRIGGER calibration_is_never_changed BEFORE UPDATE ON calibration BEGIN
SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

ALTER TABLE task_version_kit ADD COLUMN source TEXT NOT NULL DEFAULT '';

ALTER TABLE task_version_kit ADD COLUMN page TEXT NOT NULL DEFAULT '';

ALTER TABLE task_version_kit ADD COLUMN confirmed INTEGER NOT NULL DEFAULT 0 CHECK (confirmed IN (0, 1));

ALTER TABLE task_version_measures ADD COLUMN page TEXT NOT NULL DEFAULT '';

CREATE TABLE row_seal (
    of_table TEXT NOT NULL,
    id       INTEGER NOT NULL,
    digest   INTEGER NOT NULL,
    PRIMARY KEY (of_table, id)
) STRICT, WITHOUT ROWID;

ALTER TABLE move ADD COLUMN told TEXT NOT NULL DEFAULT 'unasked'
    CHECK (told IN ('unasked', 'work', 'as it was'));

ALTER TABLE move ADD COLUMN back_on TEXT CHECK (date(back_on) IS back_on);

ALTER TABLE move ADD COLUMN record INTEGER REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED;

ALTER TABLE task_version ADD COLUMN sends_out INTEGER NOT NULL DEFAULT 0 CHECK (sends_out IN (0, 1));

CREATE TABLE step_version_frees (
    owner    INTEGER NOT NULL REFERENCES step_version (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    code     TEXT NOT NULL CHECK (code <> ''),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

INSERT INTO step_version_frees SELECT id, 0, 'rear wheel' FROM step_version WHERE code = 'rear-wheel-out';

INSERT INTO step_version_frees SELECT id, 1, 'rear wheel/tyre' FROM step_version WHERE code = 'rear-wheel-out';

INSERT INTO step_version_frees SELECT id, 0, 'front wheel' FROM step_version WHERE code = 'front-wheel-out';

INSERT INTO step_version_frees SELECT id, 1, 'front wheel/tyre' FROM step_version WHERE code = 'front-wheel-out';

INSERT INTO step_version_frees SELECT id, 0, 'shock' FROM step_version WHERE code = 'shock-out';

INSERT INTO step_version_frees SELECT id, 0, 'engine' FROM step_version WHERE code = 'engine-out';

INSERT INTO step_version_frees SELECT id, 0, 'engine/piston' FROM step_version WHERE code = 'cylinder-off';

INSERT INTO step_version_frees SELECT id, 0, 'fork' FROM step_version WHERE code = 'fork-legs-out';

INSERT INTO step_version_frees SELECT id, 0, 'silencer' FROM step_version WHERE code = 'silencer-off';

INSERT INTO step_version_frees SELECT id, 0, 'chain' FROM step_version WHERE code = 'chain-off';

INSERT INTO step_version_frees SELECT id, 0, 'swingarm' FROM step_version WHERE code = 'swingarm-off';

CREATE TABLE record_stated (
    owner    INTEGER NOT NULL REFERENCES record (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    counter  TEXT NOT NULL CHECK (counter IN ('hours', 'metres', 'outings', 'starts', 'washes', 'mud days', 'crashes', 'days', 'months')),
    low      INTEGER NOT NULL CHECK (low >= 0),
    best     INTEGER CHECK (best >= low),
    high     INTEGER CHECK (high >= low),
    up_to    TEXT NOT NULL CHECK (date(up_to) IS up_to),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID;

ALTER TABLE task_version_measures ADD COLUMN job TEXT NOT NULL DEFAULT '';

ALTER TABLE task_version_measures ADD COLUMN least_good INTEGER NOT NULL DEFAULT 0
    CHECK (least_good IN (0, 1));

ALTER TABLE task_version_measures ADD COLUMN most_good INTEGER NOT NULL DEFAULT 0
    CHECK (most_good IN (0, 1));

UPDATE task_version_measures SET least_good = 1, most_good = 1
    WHERE least IS NOT NULL AND most IS NOT NULL;

ALTER TABLE joint_version ADD COLUMN position TEXT;

ALTER TABLE joint_mark ADD COLUMN item INTEGER
    REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED;

DROP TRIGGER joint_version_is_never_changed;

UPDATE joint_version SET position = 'engine' WHERE code = 'base-nuts';

UPDATE joint_version SET position = 'engine' WHERE code = 'cam-cap-bolts';

UPDATE joint_version SET position = 'engine' WHERE code = 'cam-sprocket-bolts';

UPDATE joint_version SET position = 'engine' WHERE code = 'clutch-cover-bolts';

UPDATE joint_version SET position = 'engine' WHERE code = 'clutch-hub-nut';

UPDATE joint_version SET position = 'engine' WHERE code = 'clutch-shoe-nut';

UPDATE joint_version SET position = 'engine' WHERE code = 'clutch-spring-bolts';

UPDATE joint_version SET position = 'engine' WHERE code = 'coolant-drain-bolt';

UPDATE joint_version SET position = 'engine' WHERE code = 'crankcase-bolts';

UPDATE joint_version SET position = 'engine' WHERE code = 'cylinder-bolts';

UPDATE joint_version SET position = 'engine' WHERE code = 'front-sprocket-nut';

UPDATE joint_version SET position = 'engine' WHERE code = 'head-bolts';

UPDATE joint_version SET position = 'engine' WHERE code = 'head-nuts';

UPDATE joint_version SET position = 'engine' WHERE code = 'ignition-cover-bolts';

UPDATE joint_version SET position = 'engine' WHERE code = 'kick-lever-bolt';

UPDATE joint_version SET position = 'engine' WHERE code = 'oil-drain-bolt';

UPDATE joint_version SET position = 'engine' WHERE code = 'oil-filter-bolts';

UPDATE joint_version SET position = 'engine' WHERE code = 'oil-screen-plug';

UPDATE joint_version SET position = 'engine' WHERE code = 'power-valve-bolts';

UPDATE joint_version SET position = 'engine' WHERE code = 'primary-cover-bolts';

UPDATE joint_version SET position = 'engine' WHERE code = 'primary-nut';

UPDATE joint_version SET position = 'engine' WHERE code = 'reed-block-bolts';

UPDATE joint_version SET position = 'engine' WHERE code = 'rotor-nut';

UPDATE joint_version SET position = 'engine' WHERE code = 'shift-lever-bolt';

UPDATE joint_version SET position = 'engine' WHERE code = 'spark-plug';

UPDATE joint_version SET position = 'engine' WHERE code = 'starter-bolts';

UPDATE joint_version SET position = 'engine' WHERE code = 'tensioner-bolts';

UPDATE joint_version SET position = 'engine' WHERE code = 'valve-cover-bolts';

UPDATE joint_version SET position = 'fork' WHERE code = 'fork-base-valves';

UPDATE joint_version SET position = 'fork' WHERE code = 'fork-caps';

UPDATE joint_version SET position = 'fork' WHERE code = 'fork-guard-bolts';

UPDATE joint_version SET position = 'front wheel' WHERE code = 'front-disc-bolts';

UPDATE joint_version SET position = 'front wheel' WHERE code = 'front-rim-lock';

UPDATE joint_version SET position = 'front wheel' WHERE code = 'front-spokes';

UPDATE joint_version SET position = 'rear wheel' WHERE code = 'rear-disc-bolts';

UPDATE joint_version SET position = 'rear wheel' WHERE code = 'rear-rim-lock';

UPDATE joint_version SET position = 'rear wheel' WHERE code = 'rear-spokes';

UPDATE joint_version SET position = 'rear wheel' WHERE code = 'rear-sprocket-bolts';

UPDATE joint_version SET position = 'silencer' WHERE code = 'spark-arrestor-screws';

UPDATE joint_version SET position = '' WHERE code = 'bar-clamp-bolts';

UPDATE joint_version SET position = '' WHERE code = 'bar-mount-nuts';

UPDATE joint_version SET position = '' WHERE code = 'battery-terminals';

UPDATE joint_version SET position = '' WHERE code = 'bottom-clamp-pinch';

UPDATE joint_version SET position = '' WHERE code = 'brake-arm-bolts';

UPDATE joint_version SET position = '' WHERE code = 'brake-pedal-bolt';

UPDATE joint_version SET position = '' WHERE code = 'chain-adjuster-nuts';

UPDATE joint_version SET position = '' WHERE code = 'chain-guard-bolts';

UPDATE joint_version SET position = '' WHERE code = 'chain-guide-bolts';

UPDATE joint_version SET position = '' WHERE code = 'chain-slider-screws';

UPDATE joint_version SET position = '' WHERE code = 'chamber-mounts';

UPDATE joint_version SET position = '' WHERE code = 'engine-mount-bolts';

UPDATE joint_version SET position = '' WHERE code = 'fan-screws';

UPDATE joint_version SET position = '' WHERE code = 'front-axle-nut';

UPDATE joint_version SET position = '' WHERE code = 'front-axle-pinch-fixed';

UPDATE joint_version SET position = '' WHERE code = 'front-axle-pinch-free';

UPDATE joint_version SET position = '' WHERE code = 'front-banjo-bolts';

UPDATE joint_version SET position = '' WHERE code = 'front-bleed-screw';

UPDATE joint_version SET position = '' WHERE code = 'front-caliper-bolts';

UPDATE joint_version SET position = '' WHERE code = 'front-pad-pin';

UPDATE joint_version SET position = '' WHERE code = 'fuel-pump-screws';

UPDATE joint_version SET position = '' WHERE code = 'hand-guard-bolts';

UPDATE joint_version SET position = '' WHERE code = 'head-stay-bolts';

UPDATE joint_version SET position = '' WHERE code = 'header-nuts';

UPDATE joint_version SET position = '' WHERE code = 'headlamp-screws';

UPDATE joint_version SET position = '' WHERE code = 'hose-clamps';

UPDATE joint_version SET position = '' WHERE code = 'indicator-nuts';

UPDATE joint_version SET position = '' WHERE code = 'intake-clamps';

UPDATE joint_version SET position = '' WHERE code = 'lever-perch-bolts';

UPDATE joint_version SET position = '' WHERE code = 'link-frame-bolt';

UPDATE joint_version SET position = '' WHERE code = 'link-rod-bolt';

UPDATE joint_version SET position = '' WHERE code = 'link-swingarm-bolt';

UPDATE joint_version SET position = '' WHERE code = 'mirror-nuts';

UPDATE joint_version SET position = '' WHERE code = 'panel-bolts';

UPDATE joint_version SET position = '' WHERE code = 'peg-pins';

UPDATE joint_version SET position = '' WHERE code = 'plate-bracket-bolts';

UPDATE joint_version SET position = '' WHERE code = 'radiator-bolts';

UPDATE joint_version SET position = '' WHERE code = 'rear-axle-nut';

UPDATE joint_version SET position = '' WHERE code = 'rear-banjo-bolts';

UPDATE joint_version SET position = '' WHERE code = 'rear-bleed-screw';

UPDATE joint_version SET position = '' WHERE code = 'rear-caliper-pins';

UPDATE joint_version SET position = '' WHERE code = 'rear-pad-pin';

UPDATE joint_version SET position = '' WHERE code = 'seat-bolts';

UPDATE joint_version SET position = '' WHERE code = 'shock-lower-bolt';

UPDATE joint_version SET position = '' WHERE code = 'shock-upper-bolt';

UPDATE joint_version SET position = '' WHERE code = 'side-stand-bolt';

UPDATE joint_version SET position = '' WHERE code = 'silencer-bolts';

UPDATE joint_version SET position = '' WHERE code = 'speed-sensor-screw';

UPDATE joint_version SET position = '' WHERE code = 'stem-nut';

UPDATE joint_version SET position = '' WHERE code = 'stem-ring-nut';

UPDATE joint_version SET position = '' WHERE code = 'subframe-bolts';

UPDATE joint_version SET position = '' WHERE code = 'sump-guard-bolts';

UPDATE joint_version SET position = '' WHERE code = 'swingarm-pivot-nut';

UPDATE joint_version SET position = '' WHERE code = 'tank-bolts';

UPDATE joint_version SET position = '' WHERE code = 'throttle-stop-screw';

UPDATE joint_version SET position = '' WHERE code = 'top-clamp-pinch';

CREATE TRIGGER joint_version_is_never_changed BEFORE UPDATE ON "joint_version" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;

ALTER TABLE file_state ADD COLUMN seals INTEGER NOT NULL DEFAULT 0 CHECK (seals >= 0);

ALTER TABLE file_state ADD COLUMN seal_sum INTEGER NOT NULL DEFAULT 0;

INSERT INTO garage VALUES (1, 'The lean-to', NULL);
INSERT INTO machine VALUES (1, 'Heron 250', '', '', NULL, '', '2026-01-10', 1, 0, 0, 0, 0, NULL, '');
INSERT INTO item VALUES (2, 'Rear wheel', 'rear wheel', '', '', '2026-01-10', 0, 1000, 1200, 1500, '');
INSERT INTO item VALUES (3, 'Mud wheel', 'rear wheel', '', '', '2026-01-20', 1, 0, 0, 0, '');
INSERT INTO task_version VALUES (20, 2, 21, 1, '2026-01-10', 'oil', 'Oil change', '', 'hidden wear', 'first', 'completion', 0, '', '', 0, 20, '', '', 'any', 0, 0, 'service manual', '2-9', 1, 1, 0);
INSERT INTO task_version_limits VALUES (20, 0, 'hours', 1000, NULL, 0, 0);
INSERT INTO task_version_kit VALUES (20, 0, 'engine oil', NULL, 900, 'ml', 0, 'service manual', '2-9', 1);
INSERT INTO task_version_kit VALUES (20, 1, 'drain washer', NULL, 1, 'piece', 0, '', '', 0);
INSERT INTO task_version_measures VALUES (20, 0, 'iron on the magnet', 'mm', NULL, '0.5', 'service manual', 1, '4-2', '', 0, 0);
INSERT INTO step_version VALUES (7, 23, 8, 1, '2026-01-10', 'rear-wheel-out', 'Rear wheel out', 5, 5, '', '', 0, 'common practice', 0, 1);
INSERT INTO step_version_joints VALUES (7, 0, 'drain');
INSERT INTO joint_version VALUES (50, 4, 51, 1, '2026-01-10', 'drain', 'Drain plug', 'engine', 'M12x1.5', 1, '20', NULL, 'N·m', '', 'dry', '', 'washer', 0, 'any', 0, '', 'service manual', 'p. 2-11', 1, 'Odile', '', 1, NULL, NULL, 'engine');
INSERT INTO move VALUES (4, 20, 2, '2026-01-10', 'before riding', 'fitted', 1, NULL, 'rear wheel', '', 'unasked', NULL, NULL);
INSERT INTO move VALUES (5, 21, 2, '2026-01-28', 'after riding', 'away', NULL, NULL, '', 'Lane Wheels', 'unasked', NULL, NULL);
INSERT INTO move VALUES (6, 22, 3, '2026-01-28', 'after riding', 'fitted', 1, NULL, 'rear wheel', '', 'unasked', NULL, NULL);
INSERT INTO outing VALUES (10, 1, 1, '2026-02-01', NULL, NULL, 'practice', 600, NULL, 0, 'mud', 'unstated', '');
INSERT INTO record VALUES (30, 3, 1, NULL, 21, 20, 'oil', NULL, 'done', '2026-01-15', 'after riding', NULL, NULL, NULL, NULL, NULL, 'Oil change', '', NULL, NULL, 0, '');
INSERT INTO task_version_weights VALUES (20, 0, 'mud', NULL, 1500);
INSERT INTO tool VALUES (70, 'Long red', '1/2', 'II A', '20', '200', 'N·m', NULL, NULL, 12, NULL, 1, '');
INSERT INTO joint_mark VALUES (60, 5, 51, '2026-01-15', 'loosened', 30, NULL, NULL, 'N·m', '', NULL, NULL, NULL, NULL, NULL);
INSERT INTO joint_mark VALUES (61, 6, 51, '2026-01-15', 'confirmed', 30, NULL, '20', 'N·m', '', 70, NULL, NULL, NULL, NULL);
INSERT INTO joint_mark VALUES (62, 7, 51, '2026-02-01', 'found moved', NULL, NULL, NULL, 'N·m', 'weeping' || char(9) || 'washer' || char(8238), NULL, NULL, NULL, NULL, NULL);
INSERT INTO row_seal VALUES ('garage', 1, -7184477479428055292);
INSERT INTO row_seal VALUES ('item', 2, -7093855774129075268);
INSERT INTO row_seal VALUES ('item', 3, 637827104354663118);
INSERT INTO row_seal VALUES ('joint_mark', 60, -2761328478277016020);
INSERT INTO row_seal VALUES ('joint_mark', 61, 4277977035919306844);
INSERT INTO row_seal VALUES ('joint_mark', 62, 6260528779842205778);
INSERT INTO row_seal VALUES ('joint_version', 50, 9021915879155837116);
INSERT INTO row_seal VALUES ('machine', 1, -5393126027085938209);
INSERT INTO row_seal VALUES ('move', 4, 8114874890288547533);
INSERT INTO row_seal VALUES ('move', 5, 656358685297437614);
INSERT INTO row_seal VALUES ('move', 6, 616048359404370819);
INSERT INTO row_seal VALUES ('outing', 10, 5755228656148237959);
INSERT INTO row_seal VALUES ('record', 30, 74812148276541668);
INSERT INTO row_seal VALUES ('step_version', 7, -26478964050755432);
INSERT INTO row_seal VALUES ('task_version', 20, -2118242819322999574);
INSERT INTO row_seal VALUES ('tool', 70, 8555463988041111868);
INSERT INTO step_version_frees VALUES (7, 0, 'rear wheel');
INSERT INTO step_version_frees VALUES (7, 1, 'rear wheel/tyre');

UPDATE file_state SET oldest_reader = 7, needs_program = '0.7', seals = 16, seal_sum = 946781910724868906;

PRAGMA application_id = 1464685131;

PRAGMA user_version = 8;
