// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/seal.h"

#include <QCryptographicHash>
#include <array>
#include <deque>
#include <limits>
#include <utility>

#include "core/store/migration.h"
#include "core/store/row_shape.h"

namespace wm::store {

namespace {

std::string placeOf(std::string_view table, std::int64_t row) {
    return "table " + std::string(table) + ", row " + std::to_string(row);
}

}  // namespace

void Encoding::number(std::int64_t value) {
    kindAndNumber('i', static_cast<std::uint64_t>(value));
}

// Seven bits a byte, the lowest first, and the eighth says that there are more.
void Encoding::kindAndNumber(char kind, std::uint64_t number) {
    std::array<char, 11> bytes{kind};
    std::size_t used = 1;
    for (; number >= 0x80U; number >>= 7U)
        bytes[used++] = static_cast<char>((number & 0x7FU) | 0x80U);
    bytes[used++] = static_cast<char>(number);
    bytes_.append(bytes.data(), used);
}

void Encoding::sized(char kind, std::string_view bytes) {
    kindAndNumber(kind, bytes.size());
    bytes_ += bytes;
}

void Encoding::add(const Stored& value) {
    switch (value.kind) {
        case Stored::Kind::Nothing:
            return nothing();
        case Stored::Kind::Number:
            return number(value.number);
        case Stored::Kind::Text:
            return text(value.bytes);
        case Stored::Kind::Other:
            return sized('b', value.bytes);
    }
}

RowDigest::RowDigest() : hash_(std::make_unique<QCryptographicHash>(QCryptographicHash::Blake2b_160)) {}
RowDigest::~RowDigest() = default;

void RowDigest::begin(std::string_view table) {
    row.clear();
    children.clear();
    row.text(table);
}

std::int64_t RowDigest::value() {
    hash_->reset();
    for (const std::string* part : {&row.bytes(), &children.bytes()})
        hash_->addData(QByteArrayView(part->data(), static_cast<qsizetype>(part->size())));
    const QByteArrayView digest = hash_->resultView();
    std::uint64_t value = 0;
    for (qsizetype at = 0; at < 8; ++at)
        value = value << 8U | static_cast<unsigned char>(digest[at]);
    return static_cast<std::int64_t>(value);
}

SealWalk::SealWalk(const Connection& connection, Found found)
    : db_(connection.handle()),
      found_(std::move(found)),
      seals_(db_, "SELECT id, digest FROM row_seal WHERE of_table = ? ORDER BY id") {
    if (hasTotal(connection))
        written_ = totalOf(connection);
}

void SealWalk::enter(std::string_view table) {
    seals_.reset();
    table_ = table;
    seals_.bind(1, std::string_view(table_));
    look();
}

void SealWalk::look() {
    more_ = seals_.step();
    if (more_)
        id_ = seals_.number(0);
}

void SealWalk::next() {
    seen_.add(seals_.number(1));
    look();
}

void SealWalk::gone() {
    found_(placeOf(table_, id_) + " was written and is not there");
    next();
}

void SealWalk::row(std::int64_t id, std::int64_t digest) {
    while (more_ && id_ < id)
        gone();
    if (!more_ || id_ > id)
        return found_(placeOf(table_, id) + " has no seal: it was not written by this program");
    if (seals_.number(1) != digest)
        found_(placeOf(table_, id) + " is not as it was written");
    next();
}

void SealWalk::leave() {
    while (more_)
        gone();
}

void SealWalk::end() {
    if (numberOf(db_, "SELECT count(*) FROM row_seal") != seen_.rows)
        return found_("table row_seal holds seals of a table that is none");
    if (written_ && *written_ != seen_)
        found_("table file_state: " + std::to_string(written_->rows) + " rows were written, and " +
               (written_->rows == seen_.rows ? "not these" : std::to_string(seen_.rows) + " are there"));
}

bool hasKnownSeals(const Connection& connection) {
    // How a row is read, and so sealed, is what the program of this version says.
    static const int known = latestVersion(currentSchema());
    const int version = versionOf(connection);
    return kSealedFrom <= version && version <= known;
}

namespace {

struct SealedTable {
    std::string name;
    std::vector<std::string> children;
};

bool isThere(sqlite3* db, std::string_view table) {
    Statement find(db, "SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = ?");
    find.bind(1, table);
    return find.step();
}

// Of all row types, what the file has of them: it may be of a version before some.
std::vector<SealedTable> tablesThere(const Connection& connection) {
    std::vector<SealedTable> tables;
    eachRowType([&](auto row) {
        using R = decltype(row);
        if (!isThere(connection.handle(), R::kTable))
            return;
        SealedTable& table = tables.emplace_back();
        table.name = R::kTable;
        R::fields(row, [&](std::string_view name, auto& member) {
            if constexpr (kIsChildren<std::decay_t<decltype(member)>>)
                if (isThere(connection.handle(), childTable<R>(name)))
                    table.children.push_back(childTable<R>(name));
        });
    });
    return tables;
}

// The children of one table as they stand, beside the walk through their owners.
class Children {
  public:
    Children(sqlite3* db, const std::string& table)
        : table_(table), rows_(db, "SELECT * FROM \"" + table + "\" ORDER BY owner, position") {
        more_ = rows_.step();
    }
    // Those of `owner`; those before it have none.
    void takeAll(std::int64_t owner, Encoding& into, const SealWalk::Found& found) {
        skipTo(owner, found);
        while (more_ && rows_.number(0) == owner) {
            into.text(table_);
            for (int column = 1; column < rows_.columns(); ++column)
                into.add(rows_.stored(column));
            more_ = rows_.step();
        }
    }
    void skipTo(std::int64_t owner, const SealWalk::Found& found) {
        while (more_ && rows_.number(0) < owner) {
            found(ownerless(table_, rows_.number(0)));
            more_ = rows_.step();
        }
    }

  private:
    std::string table_;
    Statement rows_;
    bool more_ = false;
};

template <class OnRow>
void digestTable(const Connection& connection, const SealedTable& table, const SealWalk::Found& found,
                 const OnRow& onRow) {
    std::deque<Children> children;
    for (const std::string& child : table.children)
        children.emplace_back(connection.handle(), child);
    RowDigest digest;
    Statement rows(connection.handle(), "SELECT * FROM \"" + table.name + "\" ORDER BY id");
    while (rows.step()) {
        const std::int64_t id = rows.number(0);
        digest.begin(table.name);
        for (int column = 0; column < rows.columns(); ++column)
            digest.row.add(rows.stored(column));
        for (Children& child : children)
            child.takeAll(id, digest.children, found);
        onRow(id, digest.value());
    }
    for (Children& child : children)
        child.skipTo(std::numeric_limits<std::int64_t>::max(), found);
}

}  // namespace

std::string ownerless(std::string_view table, std::int64_t owner) {
    return placeOf(table, owner) + " belongs to a row that is not there";
}

std::vector<std::string> alteredRows(const Connection& connection, std::size_t most) {
    std::vector<std::string> lines;
    if (!hasKnownSeals(connection))
        return lines;
    const SealWalk::Found found = [&](const std::string& line) {
        if (lines.size() < most && (lines.empty() || lines.back() != line))
            lines.push_back(line);
    };
    SealWalk seals(connection, found);
    for (const SealedTable& table : tablesThere(connection)) {
        seals.enter(table.name);
        digestTable(connection, table, found,
                    [&](std::int64_t id, std::int64_t digest) { seals.row(id, digest); });
        seals.leave();
    }
    seals.end();
    return lines;
}

void sealAll(const Connection& connection) {
    sqlite3* db = connection.handle();
    run(db, "DELETE FROM row_seal");
    SealTotal total;
    Statement insert(db, "INSERT INTO row_seal (of_table, id, digest) VALUES (?, ?, ?)");
    for (const SealedTable& table : tablesThere(connection))
        digestTable(
            connection, table, [](const std::string&) {},
            [&](std::int64_t id, std::int64_t digest) {
                insert.bind(1, std::string_view(table.name));
                insert.bind(2, id);
                insert.bind(3, digest);
                insert.run();
                total.add(digest);
            });
    if (hasTotal(connection))
        setTotal(connection, total);
}

}  // namespace wm::store
