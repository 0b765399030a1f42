// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The facts of a file that is not opened as it is. They are read table by table into an empty database of
// ours, which judges them: what else the file brings along stays behind.
#include "core/store/log.h"
#include "core/store/migration.h"
#include "core/store/opening.h"
#include "core/store/own_schema.h"
#include "core/store/reading.h"
#include "core/store/recovery.h"
#include "core/store/row_shape.h"
#include "core/store/seal.h"
#include "core/store/seal_total.h"

namespace wm::store {

namespace {

std::vector<std::string> firstColumn(const Connection& connection, const std::string& sql) {
    std::vector<std::string> values;
    Statement rows(connection.handle(), sql);
    while (rows.step())
        values.emplace_back(rows.text(0));
    return values;
}

// All but the bookkeeping, the seals and the search, in which the rows turn up by themselves.
std::vector<std::string> tablesOf(const Connection& model) {
    return firstColumn(
        model,
        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name <> 'search' AND name NOT "
        "GLOB 'search_*' AND name NOT IN ('file_state', 'verb_log', 'undo_change', 'row_seal')");
}

// A name that stands for no stored column would be taken for a text, and a view can answer anything.
void requireStored(const Connection& from, const std::string& table,
                   const std::vector<std::string>& columns) {
    Statement find(
        from.handle(),
        "SELECT count(*) FROM sqlite_schema t, pragma_table_xinfo(t.name) c WHERE t.type = 'table' "
        "AND t.rootpage > 0 AND c.hidden = 0 AND t.name = ? AND c.name = ?");
    for (const std::string& column : columns) {
        find.bind(1, std::string_view(table));
        find.bind(2, std::string_view(column));
        if (!find.step() || find.number(0) != 1)
            throw Failure(SQLITE_CORRUPT, "no " + table + "." + column + " to take over");
        find.reset();
    }
}

void copyTable(const Connection& from, const Connection& to, const std::string& table) {
    const auto columns = firstColumn(to, "SELECT name FROM pragma_table_info('" + table + "')");
    requireStored(from, table, columns);
    std::string marks = "?";
    for (std::size_t i = 1; i < columns.size(); ++i)
        marks += ", ?";
    Statement rows(from.handle(), "SELECT " + quotedList(columns) + " FROM \"" + table + "\" NOT INDEXED");
    Statement insert(to.handle(),
                     "INSERT INTO \"" + table + "\" (" + quotedList(columns) + ") VALUES (" + marks + ")");
    while (rows.step()) {
        for (int column = 0; column < static_cast<int>(columns.size()); ++column)
            insert.bindFrom(column + 1, rows, column);
        insert.run();
    }
}

// The rows that are not as they were written, by the seals that the file has. Seals that can't be copied are
// none.
std::vector<QString> judge(const Connection& from, const Connection& to) {
    if (!hasKnownSeals(to))
        return {};
    try {
        copyTable(from, to, std::string(kSealTable));
        if (hasTotal(from))
            setTotal(to, totalOf(from));
    } catch (const Failure& failure) {
        warn("seals: {}", failure.what());
    }
    std::vector<QString> altered;
    for (const std::string& line : alteredRows(to, kMostAlteredNamed))
        altered.push_back(QString::fromStdString(line));
    if (!altered.empty())
        sealAll(to);
    return altered;
}

void takeOver(const Connection& from, const Schema& schema, Facts& into) {
    const Model model(schema, versionOf(from));
    const Connection& to = model.connection();
    const Transaction reading(from, Transaction::Kind::Reading);
    Transaction writing(to, Transaction::Kind::Writing);
    for (const std::string& table : tablesOf(to))
        copyTable(from, to, table);
    into.altered = judge(from, to);
    writing.commit();
    migrate(to, schema);
    into.rows = readPicture(to).ledger.rows();
}

}  // namespace

Facts factsOf(const QString& path) {
    const Options options;
    Facts facts;
    try {
        if (auto no = refusedAtSight(path))
            return {std::move(*no), {}, {}};
        (void)takeBackInterrupted(path, options);
        const Connection from(path, Connection::Mode::ReadOnly, options);
        if (!isOurs(from))
            return {refusal(path, OpenOutcome::NotOurs, {}), {}, {}};
        from.harden();
        const int version = versionOf(from);
        if (version > latestVersion(options.schema))
            return {refusal(path, OpenOutcome::NewerRefused, {}), {}, {}};
        if (version < 1)
            throw Failure(SQLITE_CORRUPT, "a file without a version");
        facts.report.path = path;
        facts.report.fromVersion = version;
        takeOver(from, options.schema, facts);
    } catch (const Failure& failure) {
        facts.report = refusal(path, outcomeOf(failure), QString::fromUtf8(failure.what()));
    } catch (const Unreadable& row) {
        facts.report = refusal(path, OpenOutcome::Corrupt, QString::fromUtf8(row.what()));
    }
    return facts;
}

}  // namespace wm::store
