// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/schema.h"

namespace wm::store {

namespace schema1 {

// None of these tables is recorded for undo.
std::vector<std::string> bookkeeping() {
    return {
        R"(CREATE TABLE file_state (
    one           INTEGER PRIMARY KEY CHECK (one = 1),
    revision      INTEGER NOT NULL CHECK (revision >= 0),
    oldest_reader INTEGER NOT NULL CHECK (oldest_reader > 0),
    needs_program TEXT NOT NULL
) STRICT)",
        R"(INSERT INTO file_state VALUES (1, 0, 1, ''))",
        // Each verb, undo and redo is one line; of_verb is the line of the verb that it is about.
        R"(CREATE TABLE verb_log (
    revision   INTEGER PRIMARY KEY CHECK (revision > 0),
    what       TEXT NOT NULL CHECK (what IN ('done', 'undone', 'redone')),
    of_verb    INTEGER NOT NULL REFERENCES verb_log (revision),
    text       TEXT NOT NULL,
    written_at TEXT NOT NULL
) STRICT)",
        // The verbs that can be taken back (done = 1) or said again (done = 0); `changes` leads forward.
        R"(CREATE TABLE undo_change (
    verb    INTEGER PRIMARY KEY REFERENCES verb_log (revision),
    day     TEXT NOT NULL CHECK (date(day) IS day),
    done    INTEGER NOT NULL CHECK (done IN (0, 1)),
    changes BLOB NOT NULL
) STRICT)",
    };
}

// A fact or a version is added or struck, never changed; the file itself holds that.
std::vector<std::string> guards() {
    const std::vector<std::string> neverChanged = {
        "move",       "setting",      "hour_reading", "distance_reading", "outing",     "wash",
        "crash",      "task_version", "step_version", "joint_version",    "snag",       "issued_sheet",
        "record",     "snag_end",     "deferral",     "follow_up_answer", "joint_mark", "stock_order",
        "stock_move", "strike",
    };
    std::vector<std::string> statements;
    for (const std::string& table : neverChanged)
        statements.push_back("CREATE TRIGGER " + table + "_is_never_changed BEFORE UPDATE ON \"" + table +
                             "\" BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END");
    return statements;
}

}  // namespace schema1

Schema currentSchema() {
    SchemaStep first{1, "the first form of the file", 1, "0.1", {}};
    for (auto part : {schema1::bookkeeping, schema1::cards, schema1::definitions, schema1::use,
                      schema1::upkeep, schema1::shelf, schema1::search, schema1::guards})
        for (std::string& statement : part())
            first.statements.push_back(std::move(statement));
    SchemaStep sixth{6,
                     "how a move was told, what an access step frees, what is remembered of a job, which job "
                     "puts a value right",
                     6,
                     "0.6",
                     {}};
    for (auto part : {schema6::moves, schema6::stated, schema6::values})
        for (std::string& statement : part())
            sixth.statements.push_back(std::move(statement));
    // A program that does not know the weights would show hours that do not follow from the file.
    return {
        std::move(first),
        {2, "hours that count more or less by ground and pace", 2, "0.2", schema2::hourWeights()},
        // An older program would take a broken mark for no mark, and miss what was tightened with what.
        {3, "torque tools, what was tightened with them, joints shared by a model", 3, "0.3",
         schema3::drawer()},
        // An older program would take an amount for checked because the interval of its task was.
        {4, "amounts and limits with their own page of the manual", 4, "0.4", schema4::manualPages()},
        // An older program can read the rows; it may not write them, for it would not seal them.
        {5, "each row with a seal, by which it is seen that nothing else changed it", 4, "0.5",
         schema5::seals()},
        // An older program would call a machine whole whose wheel was put in and never torqued, and take
        // what is remembered for counted.
        std::move(sixth),
        // An older program would leave hand-tight on the one machine what went to another inside its engine.
        {7, "where a joint sits", 7, "0.7", schema7::inside()},
        // An older program can read the rows; it may not write them, for it would not count the seals.
        {8, "how many rows there are and what their seals add up to", 7, "0.8", schema8::total()},
        // An older program would plan work in an order that can hurt.
        {9, "which act comes before which, and what is done besides", 9, "0.9", schema9::order()}};
}

}  // namespace wm::store
