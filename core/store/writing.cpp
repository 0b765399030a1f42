// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/writing.h"

#include <deque>
#include <optional>

#include "core/base/names.h"
#include "core/store/row_shape.h"

namespace wm::store {

// Gives a statement the values of a row, and the seal the same ones. Texts that are made here live until the
// statement has run.
class RowValues {
  public:
    RowValues(Statement& into, Encoding& sealed, int first) : into_(into), sealed_(sealed), at_(first) {}

    template <class T>
    void put(const T& value) {
        if constexpr (requires { value.has_value(); }) {
            if (value)
                put(*value);
            else
                nothing();
        } else if constexpr (std::is_same_v<T, bool> || std::is_same_v<T, std::int64_t>) {
            number(std::int64_t{value});
        } else if constexpr (std::is_same_v<T, std::string>) {
            text(value);
        } else if constexpr (std::is_same_v<T, calendar::Date>) {
            text(made_.emplace_back(value.iso()));
        } else if constexpr (std::is_same_v<T, units::Decimal>) {
            text(made_.emplace_back(value.text()));
        } else if constexpr (base::Named<T>) {
            text(base::nameOf(value));
        } else if constexpr (requires { value.count(); }) {
            number(value.count());
        } else {
            number(value.value());
        }
    }

  private:
    void nothing() {
        into_.bindNull(at_++);
        sealed_.nothing();
    }
    void number(std::int64_t value) {
        into_.bind(at_++, value);
        sealed_.number(value);
    }
    void text(std::string_view text) {
        into_.bind(at_++, text);
        sealed_.text(text);
    }
    Statement& into_;
    Encoding& sealed_;
    std::deque<std::string> made_;
    int at_;
};

namespace {

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
        insert.bind(1, row.id.value());
        digest_.children.text(table);
        RowValues values(insert, digest_.children, 2);
        values.put(position++);
        Child::fields(child, [&](std::string_view, const auto& member) { values.put(member); });
        insert.run();
    }
}

template <class R>
void RowWriter::writeRow(const R& row) {
    Statement& insert = statement(std::string(R::kTable), [] { return insertSql<R>(); });
    digest_.begin(R::kTable);
    RowValues values(insert, digest_.row, 1);
    R::fields(row, [&](std::string_view, const auto& member) {
        if constexpr (!kIsChildren<std::decay_t<decltype(member)>>)
            values.put(member);
    });
    insert.run();
    R::fields(row, [&](std::string_view name, const auto& member) {
        if constexpr (kIsChildren<std::decay_t<decltype(member)>>)
            writeChildren(row, name, member);
    });
    writeSeal(R::kTable, row.id.value(), R::kKind == base::RowKind::Editable);
}

void RowWriter::writeSeal(std::string_view table, std::int64_t id, bool again) {
    Statement& insert = statement(again ? "seal again" : "seal", [again] {
        return std::string("INSERT INTO row_seal (of_table, id, digest) VALUES (?, ?, ?)") +
               (again ? " ON CONFLICT (of_table, id) DO UPDATE SET digest = excluded.digest" : "");
    });
    insert.bind(1, table);
    insert.bind(2, id);
    insert.bind(3, digest_.value());
    insert.run();
}

void RowWriter::write(const picture::Row& row) {
    std::visit([this](const auto& each) { writeRow(each); }, row);
}

}  // namespace wm::store
