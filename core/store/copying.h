// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFileDevice>
#include <QString>
#include <cstdint>

#include "core/store/connection.h"
#include "core/store/on_disk.h"

/// Copies of a whole file: with its rights, looked through before they count.
namespace wm::store {

/// Makes an empty file that was not there, with these rights and no more from its first moment. Throws
/// Failure.
void claim(const QString& path, QFileDevice::Permissions rights);

void removeWithJournal(const QString& path);

/// Copies `from` to a new file at `path` and looks that the copy is sound, holds as many rows in each table,
/// and that each is as it was written. Leaves nothing if it doesn't. The revision that was copied; throws
/// Failure.
std::int64_t copyChecked(const Connection& from, const QString& path, QFileDevice::Permissions rights,
                         const Options& options);

}  // namespace wm::store
