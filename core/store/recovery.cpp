// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/recovery.h"

#include "core/store/connection.h"
#include "core/store/log.h"
#include "core/store/on_disk.h"

namespace wm::store {

namespace {

// The journal's header holds a number of its own for each transaction. Empty if no journal is in force: a
// finished one is cut to nothing or begins with zeros.
std::string journalInForce(const QString& path) {
    constexpr std::size_t kHeader = 28;
    const QString journal = path + QStringLiteral("-journal");
    // To open a pipe is to wait.
    std::string header = disk::isFile(journal) ? disk::beginning(journal, kHeader) : std::string();
    return header.empty() || header.front() == 0 ? std::string() : header;
}

// True if the journal is there and nobody is writing it: the same one stands before and after the look at the
// lock that its writer would hold.
bool isOrphaned(const Connection& connection, const QString& path) {
    const std::string before = journalInForce(path);
    return !before.empty() && !connection.isBeingWritten() && journalInForce(path) == before;
}

}  // namespace

Recovery takeBackInterrupted(const QString& path, const Options& options) {
    if (journalInForce(path).empty())
        return {};
    try {
        const Connection connection(path, Connection::Mode::Writing, options);
        if (!connection.headerIsOurs() || !isOrphaned(connection, path))
            return {};
        // The first read of a connection that may write does it.
        (void)numberOf(connection.handle(), "PRAGMA application_id");
        note("{}: an interrupted write was taken back", path.toStdString());
        return {Recovery::Outcome::TakenBack};
    } catch (const Failure& failure) {
        const int code = failure.primaryCode();
        // Another program is at it, or there is more wrong than a half-done write: opening will tell.
        if (code == SQLITE_BUSY || code == SQLITE_CORRUPT || code == SQLITE_NOTADB)
            return {};
        return {Recovery::Outcome::Impossible, QString::fromUtf8(failure.what())};
    }
}

}  // namespace wm::store
