// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <sqlite3.h>

#include <cstdint>
#include <stdexcept>
#include <string>
#include <string_view>

namespace wm::store {

/// What SQLite refused, with its (extended) result code. Stays inside the store: each call of File turns it
/// into an outcome or an ApplyError.
class Failure : public std::runtime_error {
  public:
    Failure(int code, const std::string& what) : std::runtime_error(what), code_(code) {}
    /// The last error of `db`, and what was being done.
    static Failure of(sqlite3* db, std::string_view doing);
    [[nodiscard]] int code() const { return code_; }
    [[nodiscard]] int primaryCode() const { return code_ & 0xFF; }

  private:
    int code_;
};

/// Throws a Failure that says what was being done, if a call that has no database to ask did not do it.
void require(int code, const char* doing);

/// A value as it stands in a column; its text or bytes are valid until the next step or reset.
struct Stored {
    enum class Kind : std::uint8_t { Nothing, Number, Text, Other } kind = Kind::Nothing;
    std::int64_t number = 0;
    std::string_view bytes{};  ///< of a text, or of what is neither
};

/// One prepared statement. Throws Failure; columns count from 0, parameters from 1.
class Statement {
  public:
    Statement(sqlite3* db, std::string_view sql);
    ~Statement();
    Statement(Statement&& other) noexcept;
    Statement(const Statement&) = delete;
    Statement& operator=(const Statement&) = delete;
    Statement& operator=(Statement&&) = delete;

    void bindNull(int at);
    void bind(int at, std::int64_t value);
    /// The text must live until the statement is reset.
    void bind(int at, std::string_view text);
    void bindBlob(int at, const void* bytes, int size);
    /// The value that another statement has in a column, as it is.
    void bindFrom(int at, const Statement& other, int column);

    /// True while there is a row to read.
    bool step();
    /// For a statement that gives no rows: runs it and makes it ready for the next values.
    void run();
    void reset();

    [[nodiscard]] int columns() const;
    [[nodiscard]] std::string columnName(int column) const;
    [[nodiscard]] Stored stored(int column) const;
    [[nodiscard]] std::int64_t number(int column) const;
    /// Valid until the next step or reset.
    [[nodiscard]] std::string_view text(int column) const;
    [[nodiscard]] std::string_view blob(int column) const;

  private:
    void check(int code);
    sqlite3_stmt* statement_ = nullptr;
};

/// Runs one statement and forgets its rows.
void run(sqlite3* db, std::string_view sql);
/// The first column of the first row as a number; 0 if there is no row.
std::int64_t numberOf(sqlite3* db, std::string_view sql);
std::string textOf(sqlite3* db, std::string_view sql);

}  // namespace wm::store
