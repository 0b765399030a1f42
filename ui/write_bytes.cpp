// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/write_bytes.h"

#include <QFile>
#include <QFileInfo>
#include <QSaveFile>

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

}  // namespace

WriteResult writeBytes(const QString& path, const QByteArray& bytes) {
    const QFileInfo target(path);
    if (target.exists() && !target.isFile()) {
        QFile file(path);
        return writeAll(file, bytes, [&file] { return file.flush(); });
    }
    QSaveFile file(path);
    return writeAll(file, bytes, [&file] { return file.commit(); });
}

}  // namespace wm::ui
