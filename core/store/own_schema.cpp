// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/own_schema.h"

#include <algorithm>
#include <map>
#include <utility>

#include "core/store/migration.h"
#include "core/store/row_shape.h"

namespace wm::store {

namespace {

// Kind and name, and beside them the table and the text.
using Parts = std::map<std::pair<std::string, std::string>, std::pair<std::string, std::string>>;

Parts partsOf(const Connection& connection) {
    Parts parts;
    Statement all(connection.handle(), "SELECT type, name, tbl_name, sql FROM sqlite_schema");
    while (all.step())
        parts[{std::string(all.text(0)), std::string(all.text(1))}] = {std::string(all.text(2)),
                                                                       std::string(all.text(3))};
    return parts;
}

std::string spoken(const Parts::value_type& part) {
    return part.first.first + " " + part.first.second;
}

bool holdsFacts(const Parts::value_type& part) {
    const std::vector<std::string> tables = factTables();
    return part.first.first == "table" &&
           std::find(tables.begin(), tables.end(), part.first.second) != tables.end();
}

// What is read as a table may compute its rows: a view, a table of a module, a column that is worked out.
constexpr std::string_view kComputes =
    "SELECT type || ' ' || name FROM sqlite_schema "
    "WHERE type = 'view' OR (sql LIKE 'CREATE VIRTUAL%' AND name <> 'search') "
    "UNION ALL SELECT 'computed column ' || t.name || '.' || c.name "
    "FROM sqlite_schema t, pragma_table_xinfo(t.name) c WHERE t.type = 'table' AND c.hidden IN (2, 3)";

Schema upTo(const Schema& schema, int version) {
    return {schema.begin(), schema.begin() + version};
}

}  // namespace

Model::Model(const Schema& schema, int version)
    : connection_(QStringLiteral(":memory:"), Connection::Mode::Creating, Options{}) {
    connection_.harden();
    layOut(connection_, upTo(schema, version));
    connection_.trustSchema();
}

void requireOwnSchema(const Connection& connection, const Schema& schema) {
    // One moment: another program may just be bringing the file to its version.
    const Transaction reading(connection, Transaction::Kind::Reading);
    const int version = versionOf(connection);
    if (version < 1)
        return;  // opening says what that is
    if (version > latestVersion(schema)) {
        if (const std::string found = textOf(connection.handle(), kComputes); !found.empty())
            throw Foreign(found);
        return;
    }
    const Parts there = partsOf(connection);
    const Parts ours = partsOf(Model(schema, version).connection());
    for (const auto& part : there) {
        const auto same = ours.find(part.first);
        if (same == ours.end() || same->second != part.second)
            throw Foreign(spoken(part));
    }
    for (const auto& part : ours) {
        if (there.find(part.first) != there.end())
            continue;
        if (holdsFacts(part))
            throw Failure(SQLITE_CORRUPT, spoken(part) + " is missing");
        throw Lacking(spoken(part));
    }
}

}  // namespace wm::store
