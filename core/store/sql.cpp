// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/sql.h"

#include <utility>

namespace wm::store {

void require(int code, const char* doing) {
    if (code != SQLITE_OK)
        throw Failure(code, std::string(sqlite3_errstr(code)) + " (" + doing + ")");
}

Failure Failure::of(sqlite3* db, std::string_view doing) {
    return {sqlite3_extended_errcode(db), std::string(sqlite3_errmsg(db)) + " (" + std::string(doing) + ")"};
}

Statement::Statement(sqlite3* db, std::string_view sql) {
    if (sqlite3_prepare_v3(db, sql.data(), static_cast<int>(sql.size()), 0, &statement_, nullptr) !=
        SQLITE_OK)
        throw Failure::of(db, sql);
}

Statement::~Statement() {
    sqlite3_finalize(statement_);
}

Statement::Statement(Statement&& other) noexcept : statement_(std::exchange(other.statement_, nullptr)) {}

void Statement::check(int code) {
    if (code != SQLITE_OK)
        throw Failure::of(sqlite3_db_handle(statement_), sqlite3_sql(statement_));
}

void Statement::bindNull(int at) {
    check(sqlite3_bind_null(statement_, at));
}

void Statement::bind(int at, std::int64_t value) {
    check(sqlite3_bind_int64(statement_, at, value));
}

void Statement::bind(int at, std::string_view text) {
    // An empty view may point nowhere, and SQLite would bind NULL for it.
    const char* from = text.data() == nullptr ? "" : text.data();
    check(sqlite3_bind_text64(statement_, at, from, text.size(), SQLITE_STATIC, SQLITE_UTF8));
}

void Statement::bindBlob(int at, const void* bytes, int size) {
    check(sqlite3_bind_blob(statement_, at, size == 0 ? "" : bytes, size, SQLITE_STATIC));
}

void Statement::bindFrom(int at, const Statement& other, int column) {
    check(sqlite3_bind_value(statement_, at, sqlite3_column_value(other.statement_, column)));
}

bool Statement::step() {
    const int code = sqlite3_step(statement_);
    if (code == SQLITE_ROW)
        return true;
    if (code == SQLITE_DONE)
        return false;
    const Failure failure = Failure::of(sqlite3_db_handle(statement_), sqlite3_sql(statement_));
    sqlite3_reset(statement_);
    throw failure;
}

void Statement::run() {
    while (step()) {
    }
    reset();
}

void Statement::reset() {
    // Gives once more the error of the last step, which was thrown there.
    (void)sqlite3_reset(statement_);
    // A statement is ended after so many steps; one that is used again begins anew.
    (void)sqlite3_stmt_status(statement_, SQLITE_STMTSTATUS_VM_STEP, 1);
}

int Statement::columns() const {
    return sqlite3_column_count(statement_);
}

std::string Statement::columnName(int column) const {
    const char* name = sqlite3_column_name(statement_, column);
    return name == nullptr ? std::string() : name;
}

// One question to the statement for a whole value: each of them locks the connection.
Stored Statement::stored(int column) const {
    sqlite3_value* value = sqlite3_column_value(statement_, column);
    Stored stored;
    switch (sqlite3_value_type(value)) {
        case SQLITE_NULL:
            return stored;
        case SQLITE_INTEGER:
            stored.kind = Stored::Kind::Number;
            stored.number = sqlite3_value_int64(value);
            return stored;
        case SQLITE_TEXT:
            stored.kind = Stored::Kind::Text;
            break;
        default:
            stored.kind = Stored::Kind::Other;
    }
    if (const auto* from = static_cast<const char*>(sqlite3_value_blob(value)))
        stored.bytes = {from, static_cast<std::size_t>(sqlite3_value_bytes(value))};
    return stored;
}

std::int64_t Statement::number(int column) const {
    return sqlite3_column_int64(statement_, column);
}

std::string_view Statement::text(int column) const {
    const auto* from = reinterpret_cast<const char*>(sqlite3_column_text(statement_, column));
    if (from == nullptr)
        return {};
    return {from, static_cast<std::size_t>(sqlite3_column_bytes(statement_, column))};
}

std::string_view Statement::blob(int column) const {
    const auto* from = static_cast<const char*>(sqlite3_column_blob(statement_, column));
    if (from == nullptr)
        return {};
    return {from, static_cast<std::size_t>(sqlite3_column_bytes(statement_, column))};
}

void run(sqlite3* db, std::string_view sql) {
    Statement(db, sql).run();
}

std::int64_t numberOf(sqlite3* db, std::string_view sql) {
    Statement statement(db, sql);
    return statement.step() ? statement.number(0) : 0;
}

std::string textOf(sqlite3* db, std::string_view sql) {
    Statement statement(db, sql);
    return statement.step() ? std::string(statement.text(0)) : std::string();
}

}  // namespace wm::store
