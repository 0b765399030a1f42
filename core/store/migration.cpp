// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/migration.h"

#include <cstdlib>
#include <string_view>

#include "core/store/copying.h"
#include "core/store/log.h"
#include "core/store/on_disk.h"
#include "core/store/reading.h"
#include "core/store/seal.h"

namespace wm::store {

namespace {

void takeStep(const Connection& connection, const Schema& schema, const SchemaStep& step) {
    sqlite3* db = connection.handle();
    for (const std::string& statement : step.statements)
        run(db, statement);
    Statement broken(db, "PRAGMA foreign_key_check");
    if (broken.step())
        throw Failure(SQLITE_CONSTRAINT_FOREIGNKEY, "step " + std::to_string(step.version) +
                                                        " leaves a reference to nothing in " +
                                                        std::string(broken.text(0)));
    // What was recorded for undo is in the old form.
    run(db, "DELETE FROM undo_change");
    Statement state(db, "UPDATE file_state SET oldest_reader = ?, needs_program = ?");
    state.bind(1, std::int64_t{step.oldestReader});
    state.bind(2, std::string_view(schema.at(static_cast<std::size_t>(step.oldestReader) - 1).program));
    state.run();
    run(db, "PRAGMA user_version = " + std::to_string(step.version));
}

}  // namespace

int versionOf(const Connection& connection) {
    return static_cast<int>(numberOf(connection.handle(), "PRAGMA user_version"));
}

int latestVersion(const Schema& schema) {
    return schema.back().version;
}

void layOut(const Connection& connection, const Schema& schema) {
    Transaction writing(connection, Transaction::Kind::Writing);
    if (numberOf(connection.handle(), "SELECT count(*) FROM sqlite_schema") != 0)
        throw TakenName();
    run(connection.handle(), "PRAGMA application_id = " + std::to_string(kApplicationId));
    for (const SchemaStep& step : schema)
        takeStep(connection, schema, step);
    writing.commit();
}

QString copyBeforeMigration(const Connection& connection, const QString& path, const Options& options) {
    const QString stem = path + QStringLiteral(".v%1").arg(versionOf(connection));
    QString copy = stem + QStringLiteral(".bak");
    for (int again = 2; disk::exists(copy); ++again)
        copy = stem + QStringLiteral("-%1.bak").arg(again);
    copyChecked(connection, copy, rightsOf(path), options);
    return copy;
}

std::vector<QString> migrate(const Connection& connection, const Schema& schema) {
    std::vector<QString> done;
    // A step may rebuild a table that others refer to; its references are looked at before it is committed.
    run(connection.handle(), "PRAGMA foreign_keys = OFF");
    const int from = versionOf(connection);
    for (const SchemaStep& step : schema) {
        if (step.version <= from)
            continue;
        Transaction writing(connection, Transaction::Kind::Writing);
        takeStep(connection, schema, step);
        // A row says the same in other columns, or more: its seal is of what stands there now.
        if (step.version >= kSealedFrom)
            sealAll(connection);
        writing.commit();
        note("schema version {}: {}", step.version, step.description);
        done.push_back(QString::fromStdString(step.description));
    }
    run(connection.handle(), "PRAGMA foreign_keys = ON");
    return done;
}

namespace {

void checkBy(const Connection& connection, const char* pragma) {
    const std::string found = textOf(connection.handle(), pragma);
    if (found == "ok")
        return;
    // A page that the disc refuses is reported among the damage, with the code of the refusal.
    const std::string_view mark = "error code=";
    const auto at = found.find(mark);
    const int code = at == std::string::npos ? 0 : std::atoi(found.c_str() + at + mark.size());
    throw Failure((code & 0xFF) == SQLITE_IOERR ? code : SQLITE_CORRUPT, found);
}

}  // namespace

void quickCheck(const Connection& connection) {
    checkBy(connection, "PRAGMA quick_check(1)");
}

void fullCheck(const Connection& connection) {
    checkBy(connection, "PRAGMA integrity_check(1)");
}

}  // namespace wm::store
