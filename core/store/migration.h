// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <exception>
#include <vector>

#include "core/store/connection.h"

namespace wm::store {

int versionOf(const Connection& connection);
int latestVersion(const Schema& schema);

/// A new file can't be made: another program has made one under its name in the meantime.
class TakenName : public std::exception {};

/// Makes an empty database ours, at the latest version, in one transaction. Throws TakenName if it is not
/// empty.
void layOut(const Connection& connection, const Schema& schema);

/// A verified copy of the file as it is now, beside it: "garage.wm.v1.bak". Returns its path.
QString copyBeforeMigration(const Connection& connection, const QString& path, const Options& options);

/// Brings a file from its version to the latest, each step in its own transaction, and seals its rows anew:
/// that they were as their seals say has been looked at before. Returns what was done.
std::vector<QString> migrate(const Connection& connection, const Schema& schema);

/// Throws Failure (SQLITE_CORRUPT) with what SQLite's quick check found, if it found anything.
void quickCheck(const Connection& connection);
/// The same with all that SQLite can check, indexes too.
void fullCheck(const Connection& connection);

}  // namespace wm::store
