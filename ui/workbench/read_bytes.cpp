// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/workbench/read_bytes.h"

#include <QFile>
#include <cstdio>
#include <filesystem>

#include "core/store/store.h"
#include "ui/words/error_words.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

constexpr qint64 kLargest = 64LL * 1024 * 1024;

}  // namespace

tl::expected<QByteArray, Unread> readBytes(const QString& path) {
    std::error_code none;
    const std::filesystem::path where = store::onDisk(path);
    const auto status = std::filesystem::status(where, none);
    if (!std::filesystem::exists(status))
        return tl::unexpected(path.contains(QChar::ReplacementCharacter) ? Unread::OddName
                                                                         : Unread::NotReadable);
    if (std::filesystem::is_directory(status))
        return tl::unexpected(Unread::Folder);
    // Before it is opened: that alone may wait for ever.
    if (!std::filesystem::is_regular_file(status))
        return tl::unexpected(Unread::Endless);
    QFile file;
    std::FILE* bytesOf = std::fopen(where.c_str(), "rb");
    if (bytesOf == nullptr || !file.open(bytesOf, QIODevice::ReadOnly, QFileDevice::AutoCloseHandle))
        return tl::unexpected(Unread::NotReadable);
    if (file.size() > kLargest)
        return tl::unexpected(Unread::TooLarge);
    // It may grow while it is read.
    QByteArray bytes = file.read(kLargest + 1);
    if (file.error() != QFileDevice::NoError)
        return tl::unexpected(Unread::Broken);
    if (bytes.size() > kLargest)
        return tl::unexpected(Unread::TooLarge);
    return bytes;
}

QString wordsFor(Unread why, const QString& path) {
    const QString name = quoted(path);
    switch (why) {
        case Unread::NotReadable:
            break;
        case Unread::OddName:
            return tr("%1 can't be read: its name holds bytes that are no UTF-8 text. Give the file another "
                      "name.")
                .arg(name);
        case Unread::Folder:
            return tr("%1 is a folder: name the file in it.").arg(name);
        case Unread::Endless:
            return tr("%1 is a pipe or a device, which need not come to an end: save what it gives as a file "
                      "and name that.")
                .arg(name);
        case Unread::TooLarge:
            return tr("%1 is larger than any file of ours: check that it is the right one.").arg(name);
        case Unread::Broken:
            return tr("%1 can't be read to its end: check the disk it lies on.").arg(name);
    }
    return tr("%1 can't be read: check that it is there and that you may read it.").arg(name);
}

bool isGarage(const QByteArray& bytes) {
    // The header string of SQLite's file format.
    return bytes.startsWith(QByteArrayLiteral("SQLite format 3\0"));
}

}  // namespace wm::ui
