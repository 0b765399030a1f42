// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/on_disk.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <fstream>
#include <utility>

#include "core/base/text.h"
#include "core/store/store.h"

namespace wm::store {

namespace {

// A half of a pair by itself, which no text has: each stands for one byte from 0x80 on.
constexpr char16_t kFirstByte = 0xDC00;

bool isByte(QChar unit) {
    return unit.unicode() >= kFirstByte + 0x80 && unit.unicode() <= kFirstByte + 0xFF;
}

using std::filesystem::perms;
constexpr std::array<std::pair<perms, QFileDevice::Permission>, 9> kRights{
    {{perms::owner_read, QFileDevice::ReadOwner},
     {perms::owner_write, QFileDevice::WriteOwner},
     {perms::owner_exec, QFileDevice::ExeOwner},
     {perms::group_read, QFileDevice::ReadGroup},
     {perms::group_write, QFileDevice::WriteGroup},
     {perms::group_exec, QFileDevice::ExeGroup},
     {perms::others_read, QFileDevice::ReadOther},
     {perms::others_write, QFileDevice::WriteOther},
     {perms::others_exec, QFileDevice::ExeOther}}};

mode_t modeOf(QFileDevice::Permissions rights) {
    return static_cast<mode_t>(permsOf(rights));
}

}  // namespace

QString pathOf(std::string_view bytes) {
    QString path;
    while (!bytes.empty()) {
        std::size_t text = 1;
        // The longest sign takes four bytes.
        while (text <= 4 && text <= bytes.size() && !base::isUtf8(bytes.substr(0, text)))
            ++text;
        if (text > 4 || text > bytes.size()) {
            path += QChar(static_cast<char16_t>(kFirstByte + static_cast<unsigned char>(bytes.front())));
            text = 1;
        } else {
            path += QString::fromUtf8(bytes.data(), static_cast<qsizetype>(text));
        }
        bytes.remove_prefix(text);
    }
    return path;
}

bool isOdd(const QString& path) {
    for (qsizetype at = 0; at < path.size(); ++at)
        if (isByte(path.at(at)) && (at == 0 || !path.at(at - 1).isHighSurrogate()))
            return true;
    return false;
}

std::filesystem::path onDisk(const QString& path) {
    std::string bytes;
    qsizetype from = 0;
    const auto text = [&](qsizetype to) {
        bytes += QStringView(path).mid(from, to - from).toUtf8().toStdString();
    };
    for (qsizetype at = 0; at < path.size(); ++at) {
        if (!isByte(path.at(at)) || (at > 0 && path.at(at - 1).isHighSurrogate()))
            continue;
        text(at);
        bytes += static_cast<char>(path.at(at).unicode() - kFirstByte);
        from = at + 1;
    }
    text(path.size());
    return std::filesystem::path(bytes);
}

namespace disk {

namespace {

std::filesystem::file_status statusOf(const QString& path) {
    std::error_code none;
    return std::filesystem::status(onDisk(path), none);
}

}  // namespace

bool exists(const QString& path) {
    return std::filesystem::exists(statusOf(path));
}

bool isFile(const QString& path) {
    return std::filesystem::is_regular_file(statusOf(path));
}

bool isFolder(const QString& path) {
    return std::filesystem::is_directory(statusOf(path));
}

bool isLink(const QString& path) {
    std::error_code none;
    return std::filesystem::is_symlink(onDisk(path), none);
}

void remove(const QString& path) {
    std::error_code none;
    std::filesystem::remove(onDisk(path), none);
}

std::error_code makeFile(const QString& path, QFileDevice::Permissions rights) {
    const int file = ::open(onDisk(path).c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, modeOf(rights));
    if (file < 0)
        return {errno, std::generic_category()};
    ::close(file);
    return {};
}

std::error_code makeFolder(const QString& path, QFileDevice::Permissions rights) {
    if (::mkdir(onDisk(path).c_str(), modeOf(rights)) == 0)
        return {};
    return {errno, std::generic_category()};
}

std::string beginning(const QString& path, std::size_t most) {
    std::ifstream file(onDisk(path), std::ios::binary);
    std::string bytes(most, '\0');
    file.read(bytes.data(), static_cast<std::streamsize>(most));
    bytes.resize(file.bad() ? 0 : static_cast<std::size_t>(file.gcount()));
    return bytes;
}

}  // namespace disk

QFileDevice::Permissions rightsOf(const QString& path) {
    const perms there = disk::statusOf(path).permissions();
    QFileDevice::Permissions rights;
    if (there == perms::unknown)
        return rights;
    for (const auto& [perm, right] : kRights)
        if ((there & perm) != perms::none)
            rights |= right;
    // Nobody runs a file of ours.
    return rights & ~(QFileDevice::ExeOwner | QFileDevice::ExeGroup | QFileDevice::ExeOther);
}

perms permsOf(QFileDevice::Permissions rights) {
    perms all = perms::none;
    for (const auto& [perm, right] : kRights)
        if (rights.testFlag(right))
            all |= perm;
    return all;
}

bool isEmptyFile(const QString& path) {
    std::error_code none;
    return !disk::isLink(path) && disk::isFile(path) && std::filesystem::file_size(onDisk(path), none) == 0 &&
           !none;
}

}  // namespace wm::store
