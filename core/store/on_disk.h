// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFileDevice>
#include <QString>
#include <filesystem>
#include <string>
#include <system_error>

/// Files by names of any bytes, for which QFile has no way (pathOf and onDisk in store.h). Nothing here
/// throws.
namespace wm::store {

namespace disk {

bool exists(const QString& path);  ///< whatever it is, links followed
bool isFile(const QString& path);
bool isFolder(const QString& path);
bool isLink(const QString& path);
void remove(const QString& path);
/// A new file or folder, never one that is there; what goes wrong otherwise.
std::error_code makeFile(const QString& path, QFileDevice::Permissions rights);
std::error_code makeFolder(const QString& path, QFileDevice::Permissions rights);
/// Up to `most` bytes from the beginning; empty if it can't be read.
std::string beginning(const QString& path, std::size_t most);

}  // namespace disk

std::filesystem::perms permsOf(QFileDevice::Permissions rights);

}  // namespace wm::store
