// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/seal_total.h"

#include <memory>
#include <string>

#include "core/store/migration.h"
#include "core/store/seal.h"
#include "core/store/sql.h"

namespace wm::store {

namespace {

constexpr int kDigestColumn = 2;  // of_table, id, digest

struct Finish {
    void operator()(sqlite3_changeset_iter* changes) const { sqlite3changeset_finalize(changes); }
};

using Ask = int (*)(sqlite3_changeset_iter*, int, sqlite3_value**);

std::int64_t digestBy(Ask ask, sqlite3_changeset_iter* changes) {
    sqlite3_value* value = nullptr;
    require(ask(changes, kDigestColumn, &value), "reading a changed seal");
    if (value == nullptr)
        throw Failure(SQLITE_CORRUPT, "a changed seal without its digest");
    return sqlite3_value_int64(value);
}

void follow(sqlite3_changeset_iter* changes, SealTotal& total) {
    const char* table = nullptr;
    int columns = 0;
    int what = 0;
    require(sqlite3changeset_op(changes, &table, &columns, &what, nullptr), "reading a change");
    if (kSealTable != table)
        return;
    if (what != SQLITE_INSERT)
        total.take(digestBy(sqlite3changeset_old, changes));
    if (what != SQLITE_DELETE)
        total.add(digestBy(sqlite3changeset_new, changes));
}

}  // namespace

void SealTotal::add(std::int64_t digest) {
    ++rows;
    sum += static_cast<std::uint64_t>(digest);
}

void SealTotal::take(std::int64_t digest) {
    --rows;
    sum -= static_cast<std::uint64_t>(digest);
}

bool hasTotal(const Connection& connection) {
    return kTotalFrom <= versionOf(connection);
}

SealTotal totalOf(const Connection& connection) {
    Statement state(connection.handle(), "SELECT seals, seal_sum FROM file_state");
    if (!state.step())
        throw Failure(SQLITE_CORRUPT, "file_state is empty");
    return {state.number(0), static_cast<std::uint64_t>(state.number(1))};
}

void setTotal(const Connection& connection, const SealTotal& total) {
    Statement set(connection.handle(), "UPDATE file_state SET seals = ?, seal_sum = ?");
    set.bind(1, total.rows);
    set.bind(2, static_cast<std::int64_t>(total.sum));
    set.run();
}

void moveTotal(const Connection& connection, std::string_view changes) {
    sqlite3_changeset_iter* opened = nullptr;
    // The interface takes void*, but does not write there.
    require(
        sqlite3changeset_start(&opened, static_cast<int>(changes.size()), const_cast<char*>(changes.data())),
        "reading changes");
    const std::unique_ptr<sqlite3_changeset_iter, Finish> each(opened);
    SealTotal total = totalOf(connection);
    int code = sqlite3changeset_next(each.get());
    for (; code == SQLITE_ROW; code = sqlite3changeset_next(each.get()))
        follow(each.get(), total);
    require(code == SQLITE_DONE ? SQLITE_OK : code, "reading changes");
    setTotal(connection, total);
}

}  // namespace wm::store
