// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/store/connection.h"

namespace wm::store {

/// One line of the file's log: a verb, or that it was undone or said again. `ofVerb` is the revision at which
/// the verb was first said.
struct LogLine {
    std::int64_t revision = 0;
    std::string what;  ///< done, undone, redone
    std::int64_t ofVerb = 0;
    std::string text;
    std::string writtenAt;
};

void logVerb(const Connection& connection, const LogLine& line);
std::vector<LogLine> readLog(const Connection& connection);

void setRevision(const Connection& connection, std::int64_t revision);

/// Keeps what undo needs for a verb. What could be said again, and what is of another day, goes.
void keepForUndo(const Connection& connection, std::int64_t verb, std::string_view day,
                 std::string_view changes);

}  // namespace wm::store
