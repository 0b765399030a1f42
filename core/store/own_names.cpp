// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <string>
#include <string_view>

#include "core/store/on_disk.h"
#include "core/store/store.h"

namespace wm::store {

namespace {

namespace fs = std::filesystem;

// Every garage is an SQLite file: "SQLite format 3" (the header string of its file format).
bool isDatabase(const std::string& bytes) {
    const QString path = pathOf(bytes);
    return disk::isFile(path) && disk::beginning(path, 16).starts_with("SQLite format 3");
}

// Without links in the way, though the file need not be there.
fs::path resolved(const QString& path) {
    std::error_code none;
    fs::path target = fs::absolute(onDisk(path), none);
    if (fs::is_symlink(target, none))
        target = target.parent_path() / fs::read_symlink(target, none);
    const fs::path folder = fs::canonical(target.parent_path(), none);
    return folder.empty() ? target : folder / target.filename();
}

// The name without this ending, if a garage has it.
std::optional<QString> garageBefore(std::string_view ending, const std::string& name) {
    if (!name.ends_with(ending))
        return std::nullopt;
    const std::string garage = name.substr(0, name.size() - ending.size());
    return isDatabase(garage) ? std::optional(pathOf(garage)) : std::nullopt;
}

}  // namespace

std::optional<QString> garageThatOwns(const QString& path) {
    const fs::path name = resolved(path);
    for (const std::string_view ending : {"-journal", "-wal", "-shm"})
        if (auto garage = garageBefore(ending, name.string()))
            return garage;
    for (fs::path folder = name; folder.has_relative_path(); folder = folder.parent_path())
        if (auto garage = garageBefore(".backups", folder.string()))
            return garage;
    return std::nullopt;
}

}  // namespace wm::store
