// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/schema.h"

namespace wm::store::schema1 {

namespace {

// A list of codes: the access steps and joints of a job, the steps before a step.
std::string codeList(const std::string& owner, const std::string& table) {
    return "CREATE TABLE " + table +
           " (\n"
           "    owner    INTEGER NOT NULL REFERENCES " +
           owner +
           " (id) DEFERRABLE INITIALLY DEFERRED,\n"
           "    position INTEGER NOT NULL CHECK (position >= 0),\n"
           "    code     TEXT NOT NULL CHECK (code <> ''),\n"
           "    PRIMARY KEY (owner, position)\n"
           ") STRICT, WITHOUT ROWID";
}

std::string cautionList(const std::string& owner, const std::string& table) {
    return "CREATE TABLE " + table +
           " (\n"
           "    owner    INTEGER NOT NULL REFERENCES " +
           owner +
           " (id) DEFERRABLE INITIALLY DEFERRED,\n"
           "    position INTEGER NOT NULL CHECK (position >= 0),\n"
           "    hazard   TEXT NOT NULL CHECK (hazard IN ('gas-charged', 'spring', 'fuel', 'solvent', "
           "'brake fluid', 'hot parts', 'fibre', 'lifting', 'pinch', 'exhaust', 'electrical', "
           "'compressed air', 'used fluids', 'first ride', 'brakes', 'steering', 'wheels')),\n"
           "    PRIMARY KEY (owner, position)\n"
           ") STRICT, WITHOUT ROWID";
}

std::string followUpList(const std::string& owner, const std::string& table) {
    return "CREATE TABLE " + table +
           " (\n"
           "    owner    INTEGER NOT NULL REFERENCES " +
           owner +
           " (id) DEFERRABLE INITIALLY DEFERRED,\n"
           "    position INTEGER NOT NULL CHECK (position >= 0),\n"
           "    what     TEXT NOT NULL,\n"
           "    code     TEXT NOT NULL,\n"
           "    due      TEXT NOT NULL CHECK (due IN ('at once', 'next outing', 'after hours', "
           "'after days')),\n"
           "    amount   INTEGER NOT NULL CHECK (amount >= 0),\n"
           "    PRIMARY KEY (owner, position)\n"
           ") STRICT, WITHOUT ROWID";
}

const char* const kTaskVersion = R"(CREATE TABLE task_version (
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
) STRICT)";

const char* const kTaskLimits = R"(CREATE TABLE task_version_limits (
    owner     INTEGER NOT NULL REFERENCES task_version (id) DEFERRABLE INITIALLY DEFERRED,
    position  INTEGER NOT NULL CHECK (position >= 0),
    counter   TEXT NOT NULL CHECK (counter IN ('hours', 'metres', 'outings', 'starts', 'washes', 'mud days', 'crashes', 'days', 'months')),
    every     INTEGER NOT NULL CHECK (every >= 0),
    first     INTEGER CHECK (first >= 0),
    allowance INTEGER NOT NULL CHECK (allowance >= 0),
    hard      INTEGER NOT NULL CHECK (hard IN (0, 1)),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID)";

const char* const kTaskTriggers = R"(CREATE TABLE task_version_triggers (
    owner     INTEGER NOT NULL REFERENCES task_version (id) DEFERRABLE INITIALLY DEFERRED,
    position  INTEGER NOT NULL CHECK (position >= 0),
    happening TEXT NOT NULL CHECK (happening IN ('wash', 'pressure wash', 'mud day', 'crash', 'before race', 'job')),
    code      TEXT NOT NULL,
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID)";

const char* const kTaskKit = R"(CREATE TABLE task_version_kit (
    owner          INTEGER NOT NULL REFERENCES task_version (id) DEFERRABLE INITIALLY DEFERRED,
    position       INTEGER NOT NULL CHECK (position >= 0),
    what           TEXT NOT NULL,
    line           INTEGER REFERENCES stock_line (id) DEFERRABLE INITIALLY DEFERRED,
    amount         INTEGER NOT NULL CHECK (amount >= 0),
    unit           TEXT NOT NULL CHECK (unit IN ('piece', 'ml', 'g')),
    only_if_needed INTEGER NOT NULL CHECK (only_if_needed IN (0, 1)),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID)";

// Limits are kept as printed, so that 2.50 stays 2.50.
const char* const kTaskMeasures = R"(CREATE TABLE task_version_measures (
    owner     INTEGER NOT NULL REFERENCES task_version (id) DEFERRABLE INITIALLY DEFERRED,
    position  INTEGER NOT NULL CHECK (position >= 0),
    name      TEXT NOT NULL CHECK (name <> ''),
    unit      TEXT NOT NULL,
    least     TEXT CHECK (least NOT GLOB '*[^-0-9.]*' AND least GLOB '*[0-9]'),
    most      TEXT CHECK (most NOT GLOB '*[^-0-9.]*' AND most GLOB '*[0-9]'),
    source    TEXT NOT NULL,
    confirmed INTEGER NOT NULL CHECK (confirmed IN (0, 1)),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID)";

const char* const kStepVersion = R"(CREATE TABLE step_version (
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
) STRICT)";

const char* const kStepNeeds = R"(CREATE TABLE step_version_needs (
    owner            INTEGER NOT NULL REFERENCES step_version (id) DEFERRABLE INITIALLY DEFERRED,
    position         INTEGER NOT NULL CHECK (position >= 0),
    code             TEXT NOT NULL CHECK (code <> ''),
    only_some_models INTEGER NOT NULL CHECK (only_some_models IN (0, 1)),
    applies          INTEGER NOT NULL CHECK (applies IN (0, 1)),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID)";

const char* const kJointVersion = R"(CREATE TABLE joint_version (
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
) STRICT)";

}  // namespace

// Versions of tasks, access steps and joints: a change adds a version.
std::vector<std::string> definitions() {
    return {
        kTaskVersion,
        kTaskLimits,
        kTaskTriggers,
        kTaskKit,
        kTaskMeasures,
        cautionList("task_version", "task_version_cautions"),
        codeList("task_version", "task_version_steps"),
        codeList("task_version", "task_version_joints"),
        followUpList("task_version", "task_version_follow_ups"),
        kStepVersion,
        kStepNeeds,
        codeList("step_version", "step_version_loose_before"),
        codeList("step_version", "step_version_joints"),
        followUpList("step_version", "step_version_follow_ups"),
        cautionList("step_version", "step_version_cautions"),
        kJointVersion,
    };
}

}  // namespace wm::store::schema1

namespace wm::store::schema2 {

std::vector<std::string> hourWeights() {
    return {R"(CREATE TABLE task_version_weights (
    owner    INTEGER NOT NULL REFERENCES task_version (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL CHECK (position >= 0),
    ground   TEXT CHECK (ground IN ('unstated', 'hard', 'dust', 'sand', 'mud', 'water')),
    pace     TEXT CHECK (pace IN ('unstated', 'race', 'hard', 'easy')),
    permille INTEGER NOT NULL CHECK (permille > 0),
    PRIMARY KEY (owner, position)
) STRICT, WITHOUT ROWID)"};
}

}  // namespace wm::store::schema2
