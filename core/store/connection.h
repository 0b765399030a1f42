// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <array>
#include <cstdint>

#include "core/store/options.h"
#include "core/store/sql.h"

namespace wm::store {

/// One of Qt's connections to a file, under a name that nobody else has, and its sqlite3 handle. Lives in the
/// thread that made it. Everything throws Failure.
class Connection {
  public:
    enum class Mode { ReadOnly, Writing, Creating };

    Connection(const QString& path, Mode mode, const Options& options);
    ~Connection();
    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;

    [[nodiscard]] sqlite3* handle() const { return handle_; }
    /// True if the file may not be written, whatever was asked for.
    [[nodiscard]] bool readOnly() const;

    /// The first 100 bytes of the file, zeros where it is shorter.
    [[nodiscard]] std::array<unsigned char, 100> header() const;

    /// Whether the header's own words say that it is ours. For a file that SQLite refuses to read.
    [[nodiscard]] bool headerIsOurs() const;

    /// Whether some program is writing just now. Reads nothing.
    [[nodiscard]] bool isBeingWritten() const;

    /// False if the file ends within a page: a piece of it is missing, though SQLite reads that as zeros.
    [[nodiscard]] bool endsWithAPage() const;

    /// References on, the schema and the search index out of reach of plain SQL, nothing that stands in the
    /// schema trusted, limits on what a statement may be. Reads nothing.
    void harden() const;
    /// For a schema that is our own, word for word: its triggers may feed the search.
    void trustSchema() const;
    /// Journal TRUNCATE and synchronous FULL, and looks that they hold.
    void setDurability(Durability durability) const;

  private:
    void close();
    [[nodiscard]] sqlite3_file* file() const;
    QString name_;
    sqlite3* handle_ = nullptr;
};

/// Taken back unless committed.
class Transaction {
  public:
    enum class Kind { Reading, Writing };
    Transaction(const Connection& connection, Kind kind, Durability durability = Durability::Full);
    ~Transaction();
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    void commit();
    void rollBack() noexcept;

  private:
    sqlite3* db_;
    bool open_ = false;
};

/// Copies the whole database of `from` over that of `to`, page by page.
void copyDatabase(const Connection& from, const Connection& to);

}  // namespace wm::store
