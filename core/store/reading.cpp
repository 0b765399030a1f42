// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/reading.h"

#include <deque>
#include <optional>
#include <utility>

#include "core/base/names.h"
#include "core/base/text.h"
#include "core/picture/soundness.h"
#include "core/store/row_shape.h"
#include "core/store/seal.h"
#include "core/store/sql.h"
#include "core/units/decimal.h"

namespace wm::store {

namespace {

template <class T>
inline constexpr bool kIsOptional = false;
template <class T>
inline constexpr bool kIsOptional<std::optional<T>> = true;

// What stands in a column of text. Bytes that are no text are damage: shown as something else they would be a
// fact that nobody said.
bool takeText(const Stored& from, std::string& into) {
    const std::string_view text = from.bytes;
    if (from.kind != Stored::Kind::Text || text.size() > base::kLongestNote)
        return false;
    if (!base::isUtf8(text) || text.find('\0') != std::string_view::npos)
        return false;
    // Earlier versions took signs that no text holds any more; they are read as harmless ones.
    into = base::harmless(text);
    return true;
}

// Reads one column into a member. False if the value is no value of the member's type.
template <class T>
bool take(const Stored& from, T& into) {
    if constexpr (kIsOptional<T>) {
        if (from.kind == Stored::Kind::Nothing) {
            into.reset();
            return true;
        }
        return take(from, into.emplace());
    } else if constexpr (std::is_same_v<T, std::string>) {
        return takeText(from, into);
    } else if constexpr (std::is_same_v<T, calendar::Date>) {
        const auto date = calendar::parseDate({}, from.bytes);
        if (!date)
            return false;
        into = *date;
    } else if constexpr (std::is_same_v<T, units::Decimal>) {
        const auto decimal = units::parseDecimal({}, from.bytes);
        if (!decimal)
            return false;
        into = *decimal;
    } else if constexpr (base::Named<T>) {
        const auto value = base::fromName<T>(from.bytes);
        if (!value)
            return false;
        into = *value;
    } else if (from.kind != Stored::Kind::Number) {
        return false;
    } else if constexpr (std::is_same_v<T, bool>) {
        into = from.number != 0;
    } else {
        into = T(from.number);
    }
    return true;
}

std::string shown(std::string_view text) {
    static constexpr std::size_t kMostShown = 40;
    return base::onOneLine(text.substr(0, kMostShown));
}

// Where a value stands, for whoever mends the file: children are found by the row that they belong to.
struct Cell {
    std::string_view table;
    std::string_view column;
    std::int64_t row = 0;
};

[[noreturn]] void refuse(const Stored& from, const Cell& cell) {
    const std::string place = "table " + std::string(cell.table) + ", row " + std::to_string(cell.row) +
                              ", column " + std::string(cell.column);
    if (from.bytes.size() > base::kLongestNote)
        throw Unreadable(place + " is longer than any text here");
    std::string text;
    const bool isText = from.kind == Stored::Kind::Nothing || takeText(from, text);
    throw Unreadable(
        place + (isText ? " holds what is not known here: " + shown(text) : " holds bytes that are no text"));
}

template <class T>
void takeOrThrow(const Stored& from, T& into, const Cell& cell) {
    if (!take(from, into))
        refuse(from, cell);
    if constexpr (std::is_same_v<T, std::string>)
        if (cell.column == "name")
            into = base::onOneLine(into);
}

// Walks one child table in the order of its owners, beside the walk through the owners themselves.
class ChildCursor {
  public:
    ChildCursor(sqlite3* db, std::string table, const std::vector<std::string>& columns)
        : table_(std::move(table)),
          rows_(db, "SELECT owner, position, " + quotedList(columns) + " FROM \"" + table_ +
                        "\" ORDER BY owner, position") {
        next();
    }

    template <class Child>
    void takeAll(std::int64_t owner, std::vector<Child>& into, Encoding& sealed) {
        while (more_ && owner_ <= owner) {
            if (owner_ < owner)
                requireNone();
            Child& child = into.emplace_back();
            sealed.text(table_);
            sealed.add(rows_.stored(1));
            int column = 2;
            Child::fields(child, [&](std::string_view name, auto& member) {
                const Stored stored = rows_.stored(column++);
                sealed.add(stored);
                takeOrThrow(stored, member, {table_, name, owner});
            });
            next();
        }
    }
    /// All owners have been read.
    void requireNone() const {
        if (more_)
            throw Altered(ownerless(table_, owner_));
    }

  private:
    void next() {
        more_ = rows_.step();
        if (more_)
            owner_ = rows_.number(0);
    }
    std::string table_;
    Statement rows_;
    bool more_ = false;
    std::int64_t owner_ = 0;  ///< of the child that is read next
};

template <class R>
std::deque<ChildCursor> childCursors(sqlite3* db) {
    std::deque<ChildCursor> cursors;
    R row{};
    R::fields(row, [&](std::string_view name, auto& member) {
        using Member = std::decay_t<decltype(member)>;
        if constexpr (kIsChildren<Member>)
            cursors.emplace_back(db, childTable<R>(name), columnsOf<typename Member::value_type>());
    });
    return cursors;
}

template <class R>
void readTable(sqlite3* db, SealWalk* seals, std::vector<R>& into) {
    if (seals != nullptr)
        seals->enter(R::kTable);
    RowDigest digest;
    std::deque<ChildCursor> children = childCursors<R>(db);
    Statement rows(
        db, "SELECT " + quotedList(columnsOf<R>()) + " FROM \"" + std::string(R::kTable) + "\" ORDER BY id");
    while (rows.step()) {
        R& row = into.emplace_back();
        int column = 0;
        auto child = children.begin();
        digest.begin(R::kTable);
        R::fields(row, [&](std::string_view name, auto& member) {
            if constexpr (kIsChildren<std::decay_t<decltype(member)>>) {
                (child++)->takeAll(row.id.value(), member, digest.children);
            } else {
                const Stored stored = rows.stored(column++);
                digest.row.add(stored);
                takeOrThrow(stored, member, {R::kTable, name, row.id.value()});
            }
        });
        if (seals != nullptr)
            seals->row(row.id.value(), digest.value());
    }
    for (const ChildCursor& child : children)
        child.requireNone();
    if (seals != nullptr)
        seals->leave();
}

std::string wordsFor(const picture::Unsound& unsound) {
    const base::Error& error = unsound.error;
    const std::string place = "table " + std::string(unsound.table) + ", row " + std::to_string(unsound.row) +
                              ", column " + error.field.text();
    if (error.fault == base::Fault::Inconsistent)
        return place + " refers to nothing: " + shown(error.given);
    if (error.fault == base::Fault::Cycle)
        return place + " puts a part into itself";
    if (error.fault == base::Fault::TooLong)
        return place + " is longer than the " + error.wanted + " bytes that it may have";
    return place + " is out of bounds: " + shown(error.given);
}

}  // namespace

std::int64_t revisionOf(const Connection& connection) {
    return numberOf(connection.handle(), "SELECT revision FROM file_state");
}

Picture readPictureHere(const Connection& connection) {
    picture::Rows rows;
    // A newer file may have sealed columns that are not known here.
    std::optional<SealWalk> seals;
    if (hasKnownSeals(connection))
        seals.emplace(connection, [](const std::string& line) { throw Altered(line); });
    eachRowType([&](auto row) {
        readTable(connection.handle(), seals ? &*seals : nullptr, std::get<std::vector<decltype(row)>>(rows));
    });
    if (seals)
        seals->end();
    // Seals can be forged, and earlier versions had none.
    if (const auto unsound = picture::firstUnsound(rows))
        throw Unreadable(wordsFor(*unsound));
    return {picture::Ledger(std::move(rows)), revisionOf(connection)};
}

Picture readPicture(const Connection& connection) {
    Transaction reading(connection, Transaction::Kind::Reading);
    Picture picture = readPictureHere(connection);
    reading.commit();
    return picture;
}

}  // namespace wm::store
