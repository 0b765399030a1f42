// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/verb_history.h"

namespace wm::store {

void logVerb(const Connection& connection, const LogLine& line) {
    Statement add(connection.handle(),
                  "INSERT INTO verb_log (revision, what, of_verb, text, written_at) "
                  "VALUES (?, ?, ?, ?, ?)");
    add.bind(1, line.revision);
    add.bind(2, std::string_view(line.what));
    add.bind(3, line.ofVerb);
    add.bind(4, std::string_view(line.text));
    add.bind(5, std::string_view(line.writtenAt));
    add.run();
}

std::vector<LogLine> readLog(const Connection& connection) {
    std::vector<LogLine> lines;
    Statement all(connection.handle(),
                  "SELECT revision, what, of_verb, text, written_at FROM verb_log ORDER BY revision");
    while (all.step())
        lines.push_back({all.number(0), std::string(all.text(1)), all.number(2), std::string(all.text(3)),
                         std::string(all.text(4))});
    return lines;
}

void setRevision(const Connection& connection, std::int64_t revision) {
    Statement set(connection.handle(), "UPDATE file_state SET revision = ?");
    set.bind(1, revision);
    set.run();
}

void keepForUndo(const Connection& connection, std::int64_t verb, std::string_view day,
                 std::string_view changes) {
    // What was said the day before yesterday is beyond any undo.
    Statement clear(connection.handle(),
                    "DELETE FROM undo_change WHERE done = 0 OR day NOT BETWEEN date(?, '-1 day') AND ?");
    clear.bind(1, day);
    clear.bind(2, day);
    clear.run();
    Statement keep(connection.handle(),
                   "INSERT INTO undo_change (verb, day, done, changes) VALUES (?, ?, 1, ?)");
    keep.bind(1, verb);
    keep.bind(2, day);
    keep.bindBlob(3, changes.data(), static_cast<int>(changes.size()));
    keep.run();
}

}  // namespace wm::store
