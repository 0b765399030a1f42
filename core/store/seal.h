// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/store/seal_total.h"
#include "core/store/sql.h"

class QCryptographicHash;

/// Each row has a seal: a digest of what was written, its children with it. A row that something else
/// changed, took away or put there no longer agrees with its seal. It finds damage and foreign hands, not a
/// forger.
namespace wm::store {

class Connection;

/// Files have seals from this version on.
inline constexpr int kSealedFrom = 5;
inline constexpr std::string_view kSealTable = "row_seal";

/// Values one after the other, each with its kind and length, so that no two lists of values give the same
/// bytes.
class Encoding {
  public:
    void clear() { bytes_.clear(); }
    void nothing() { bytes_ += 'n'; }
    void number(std::int64_t value);
    void text(std::string_view text) { sized('t', text); }
    void add(const Stored& value);
    [[nodiscard]] const std::string& bytes() const { return bytes_; }

  private:
    void kindAndNumber(char kind, std::uint64_t number);
    void sized(char kind, std::string_view bytes);
    std::string bytes_;
};

/// The digest of a row: the first 64 bits of BLAKE2b-160 over the name of its table, its columns in their
/// order, and for each child, by table and position, the name of its table and its columns but the owner.
/// What is never there adds nothing: a table of children that comes later changes no seal.
class RowDigest {
  public:
    RowDigest();
    ~RowDigest();
    RowDigest(const RowDigest&) = delete;
    RowDigest& operator=(const RowDigest&) = delete;

    void begin(std::string_view table);
    Encoding row;
    Encoding children;
    [[nodiscard]] std::int64_t value();

  private:
    std::unique_ptr<QCryptographicHash> hash_;
};

/// Walks the seals of a file beside its rows, table by table and in the order of ids, and gives `found` a
/// line for each row that is not as it was written. Each begins with the place: "table wash, row 7 ...".
class SealWalk {
  public:
    using Found = std::function<void(const std::string& line)>;
    SealWalk(const Connection& connection, Found found);
    void enter(std::string_view table);
    void row(std::int64_t id, std::int64_t digest);
    /// No more rows in this table.
    void leave();
    /// No more tables.
    void end();

  private:
    void gone();
    void next();
    void look();
    sqlite3* db_;
    Found found_;
    Statement seals_;
    std::string table_;
    bool more_ = false;
    std::int64_t id_ = 0;  ///< of the seal that the walk stands at, if there is one
    SealTotal seen_;
    std::optional<SealTotal> written_;  ///< what the file says, from the version on that says it
};

/// The line for a child whose owner is not there.
std::string ownerless(std::string_view table, std::int64_t owner);

/// Whether the rows of this file have seals and this program knows how they were reckoned.
bool hasKnownSeals(const Connection& connection);

/// The rows that are not as they were written, at most so many; none in a file without known seals. Reads the
/// rows as they stand, whatever they hold.
std::vector<std::string> alteredRows(const Connection& connection, std::size_t most);
inline constexpr std::size_t kMostAlteredNamed = 20;

/// Gives each row the seal of what stands there now. Inside a transaction; throws Failure.
void sealAll(const Connection& connection);

}  // namespace wm::store
