// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/reading.h"

#include <deque>
#include <optional>
#include <utility>

#include "core/base/names.h"
#include "core/store/row_shape.h"
#include "core/store/sql.h"
#include "core/units/decimal.h"

namespace wm::store {

namespace {

template <class T>
inline constexpr bool kIsOptional = false;
template <class T>
inline constexpr bool kIsOptional<std::optional<T>> = true;

// Reads one column into a member. False if the value is no value of the member's type.
template <class T>
bool take(const Statement& from, int column, T& into) {
    if constexpr (kIsOptional<T>) {
        if (from.isNull(column)) {
            into.reset();
            return true;
        }
        return take(from, column, into.emplace());
    } else if constexpr (std::is_same_v<T, bool>) {
        into = from.number(column) != 0;
    } else if constexpr (std::is_same_v<T, std::int64_t>) {
        into = from.number(column);
    } else if constexpr (std::is_same_v<T, std::string>) {
        into.assign(from.text(column));
    } else if constexpr (std::is_same_v<T, calendar::Date>) {
        const auto date = calendar::parseDate({}, from.text(column));
        if (!date)
            return false;
        into = *date;
    } else if constexpr (std::is_same_v<T, units::Decimal>) {
        const auto decimal = units::parseDecimal({}, from.text(column));
        if (!decimal)
            return false;
        into = *decimal;
    } else if constexpr (base::Named<T>) {
        const auto value = base::fromName<T>(from.text(column));
        if (!value)
            return false;
        into = *value;
    } else {
        into = T(from.number(column));
    }
    return true;
}

template <class T>
void takeOrThrow(const Statement& from, int column, T& into, std::string_view table, std::string_view name) {
    if (!take(from, column, into))
        throw Unreadable(std::string(table) + "." + std::string(name) + ": " +
                         std::string(from.text(column)));
}

// Walks one child table in the order of its owners, beside the walk through the owners themselves.
class ChildCursor {
  public:
    ChildCursor(sqlite3* db, std::string table, const std::vector<std::string>& columns)
        : table_(std::move(table)),
          rows_(db,
                "SELECT owner, " + quotedList(columns) + " FROM \"" + table_ + "\" ORDER BY owner, position"),
          more_(rows_.step()) {}

    template <class Child>
    void takeAll(std::int64_t owner, std::vector<Child>& into) {
        while (more_ && rows_.number(0) <= owner) {
            if (rows_.number(0) < owner)
                throw Unreadable(table_ + ": a row without an owner");
            Child& child = into.emplace_back();
            int column = 1;
            Child::fields(child, [&](std::string_view name, auto& member) {
                takeOrThrow(rows_, column++, member, table_, name);
            });
            more_ = rows_.step();
        }
    }

  private:
    std::string table_;
    Statement rows_;
    bool more_;
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
void readTable(sqlite3* db, std::vector<R>& into) {
    std::deque<ChildCursor> children = childCursors<R>(db);
    Statement rows(
        db, "SELECT " + quotedList(columnsOf<R>()) + " FROM \"" + std::string(R::kTable) + "\" ORDER BY id");
    while (rows.step()) {
        R& row = into.emplace_back();
        int column = 0;
        auto child = children.begin();
        R::fields(row, [&](std::string_view name, auto& member) {
            if constexpr (kIsChildren<std::decay_t<decltype(member)>>)
                (child++)->takeAll(row.id.value(), member);
            else
                takeOrThrow(rows, column++, member, R::kTable, name);
        });
    }
}

}  // namespace

std::int64_t revisionOf(const Connection& connection) {
    return numberOf(connection.handle(), "SELECT revision FROM file_state");
}

Picture readPictureHere(const Connection& connection) {
    picture::Rows rows;
    eachRowType(
        [&](auto row) { readTable(connection.handle(), std::get<std::vector<decltype(row)>>(rows)); });
    return {picture::Ledger(std::move(rows)), revisionOf(connection)};
}

Picture readPicture(const Connection& connection) {
    Transaction reading(connection, Transaction::Kind::Reading);
    Picture picture = readPictureHere(connection);
    reading.commit();
    return picture;
}

}  // namespace wm::store
