// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/writing.h"

#include <deque>
#include <optional>

#include "core/base/names.h"
#include "core/store/row_shape.h"

namespace wm::store {

namespace {

// Binds one member. Texts that are made here live in `made` until the statement has run.
template <class T>
void put(Statement& into, int at, const T& value, std::deque<std::string>& made) {
    if constexpr (requires { value.has_value(); }) {
        if (value)
            put(into, at, *value, made);
        else
            into.bindNull(at);
    } else if constexpr (std::is_same_v<T, bool>) {
        into.bind(at, std::int64_t{value});
    } else if constexpr (std::is_same_v<T, std::int64_t>) {
        into.bind(at, value);
    } else if constexpr (std::is_same_v<T, std::string>) {
        into.bind(at, std::string_view(value));
    } else if constexpr (std::is_same_v<T, calendar::Date>) {
        into.bind(at, std::string_view(made.emplace_back(value.iso())));
    } else if constexpr (std::is_same_v<T, units::Decimal>) {
        into.bind(at, std::string_view(made.emplace_back(value.text())));
    } else if constexpr (base::Named<T>) {
        into.bind(at, base::nameOf(value));
    } else if constexpr (requires { value.count(); }) {
        into.bind(at, value.count());
    } else {
        into.bind(at, value.value());
    }
}

std::string placeholders(std::size_t count) {
    std::string marks = "?";
    for (std::size_t i = 1; i < count; ++i)
        marks += ", ?";
    return marks;
}

template <class R>
std::string insertSql() {
    const std::vector<std::string> columns = columnsOf<R>();
    std::string sql = "INSERT INTO \"" + std::string(R::kTable) + "\" (" + quotedList(columns) +
                      ") VALUES (" + placeholders(columns.size()) + ")";
    if constexpr (R::kKind == base::RowKind::Editable) {
        sql += " ON CONFLICT (id) DO UPDATE SET ";
        for (std::size_t i = 1; i < columns.size(); ++i)
            sql += (i == 1 ? "\"" : ", \"") + columns[i] + "\" = excluded.\"" + columns[i] + "\"";
    }
    return sql;
}

}  // namespace

template <class MakeSql>
Statement& RowWriter::statement(const std::string& key, const MakeSql& sql) {
    const auto at = statements_.find(key);
    if (at != statements_.end())
        return at->second;
    return statements_.emplace(key, Statement(db_, sql())).first->second;
}

template <class R, class Child>
void RowWriter::writeChildren(const R& row, std::string_view field, const std::vector<Child>& children) {
    const std::string table = childTable<R>(field);
    if constexpr (R::kKind == base::RowKind::Editable) {
        Statement& clear =
            statement("-" + table, [&] { return "DELETE FROM \"" + table + "\" WHERE owner = ?"; });
        clear.bind(1, row.id.value());
        clear.run();
    }
    if (children.empty())
        return;
    Statement& insert = statement(table, [&] {
        const std::vector<std::string> columns = columnsOf<Child>();
        return "INSERT INTO \"" + table + "\" (owner, position, " + quotedList(columns) + ") VALUES (" +
               placeholders(columns.size() + 2) + ")";
    });
    std::int64_t position = 0;
    for (const Child& child : children) {
        std::deque<std::string> made;
        insert.bind(1, row.id.value());
        insert.bind(2, position++);
        int at = 3;
        Child::fields(child, [&](std::string_view, const auto& member) { put(insert, at++, member, made); });
        insert.run();
    }
}

template <class R>
void RowWriter::writeRow(const R& row) {
    Statement& insert = statement(std::string(R::kTable), [] { return insertSql<R>(); });
    std::deque<std::string> made;
    int at = 1;
    R::fields(row, [&](std::string_view, const auto& member) {
        if constexpr (!kIsChildren<std::decay_t<decltype(member)>>)
            put(insert, at++, member, made);
    });
    insert.run();
    R::fields(row, [&](std::string_view name, const auto& member) {
        if constexpr (kIsChildren<std::decay_t<decltype(member)>>)
            writeChildren(row, name, member);
    });
}

void RowWriter::write(const picture::Row& row) {
    std::visit([this](const auto& each) { writeRow(each); }, row);
}

}  // namespace wm::store
