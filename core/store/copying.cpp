// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/copying.h"

#include <map>
#include <string>

#include "core/store/migration.h"
#include "core/store/on_disk.h"
#include "core/store/reading.h"
#include "core/store/seal.h"
#include "core/store/store.h"

namespace wm::store {

namespace {

std::string quotedName(std::string_view name) {
    std::string quoted = "\"";
    for (const char c : name)
        quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
    return quoted + '"';
}

// How many rows each table has, in whatever version the file is.
std::map<std::string, std::int64_t> rowCounts(const Connection& connection) {
    std::map<std::string, std::int64_t> counts;
    Statement tables(connection.handle(),
                     "SELECT name FROM sqlite_schema WHERE type = 'table' AND rootpage > 0");
    while (tables.step()) {
        const std::string name(tables.text(0));
        counts[name] = numberOf(connection.handle(), "SELECT count(*) FROM " + quotedName(name));
    }
    return counts;
}

// What was copied is compared with what it was copied from, while nobody can write there.
std::int64_t copyAndCompare(const Connection& from, const Connection& to) {
    const Transaction reading(from, Transaction::Kind::Reading);
    const std::int64_t revision = revisionOf(from);
    const auto rows = rowCounts(from);
    copyDatabase(from, to);
    fullCheck(to);
    if (revisionOf(to) != revision || versionOf(to) != versionOf(from) || rowCounts(to) != rows)
        throw Failure(SQLITE_IOERR, "the copy is not like the file");
    if (const auto altered = alteredRows(to, 1); !altered.empty())
        throw Failure(SQLITE_CORRUPT, altered.front());
    return revision;
}

}  // namespace

void claim(const QString& path, QFileDevice::Permissions rights) {
    rights |= QFileDevice::ReadOwner | QFileDevice::WriteOwner;
    if (const auto trouble = disk::makeFile(path, rights))
        throw Failure(trouble == std::errc::no_space_on_device ? SQLITE_FULL : SQLITE_CANTOPEN,
                      trouble.message());
    // The system takes away from a new file what it may not have by custom; this one has what its model has.
    std::error_code trouble;
    std::filesystem::permissions(onDisk(path), permsOf(rights), trouble);
    if (trouble)
        throw Failure(SQLITE_PERM, trouble.message());
}

void removeWithJournal(const QString& path) {
    disk::remove(path);
    disk::remove(path + QStringLiteral("-journal"));
}

std::int64_t copyChecked(const Connection& from, const QString& path, QFileDevice::Permissions rights,
                         const Options& options) {
    claim(path, rights);
    try {
        const Connection to(path, Connection::Mode::Writing, options);
        return copyAndCompare(from, to);
    } catch (const Failure&) {
        removeWithJournal(path);
        throw;
    }
}

}  // namespace wm::store
