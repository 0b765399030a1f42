// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/workbench/write_bytes.h"

#include <QFile>
#include <QFileInfo>
#include <QSaveFile>

#include "ui/words/tr.h"

namespace wm::ui {

namespace {

template <class File, class Finish>
WriteResult writeAll(File& file, const QByteArray& bytes, const Finish& finish) {
    if (!file.open(QIODevice::WriteOnly))
        return {WriteResult::Outcome::NotAllowed, file.errorString()};
    if (file.write(bytes) != bytes.size() || !finish())
        return {WriteResult::Outcome::NotWritten, file.errorString()};
    return {};
}

// Every garage is an SQLite file: "SQLite format 3" (the header string of its file format).
bool isGarage(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) && file.read(16).startsWith("SQLite format 3");
}

}  // namespace

WriteResult writeBytes(const QString& path, const QByteArray& bytes) {
    const QFileInfo target(path);
    if (target.exists() && !target.isFile()) {
        QFile file(path);
        return writeAll(file, bytes, [&file] { return file.flush(); });
    }
    if (isGarage(path))
        return {WriteResult::Outcome::NotAllowed, tr("a garage is in that file, and it stays")};
    QSaveFile file(path);
    return writeAll(file, bytes, [&file] { return file.commit(); });
}

}  // namespace wm::ui
