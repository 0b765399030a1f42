// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "core/store/store.h"

namespace wm::store {

namespace {

// Every garage is an SQLite file: "SQLite format 3" (the header string of its file format).
bool isDatabase(const QString& path) {
    QFile file(path);
    return QFileInfo(path).isFile() && file.open(QIODevice::ReadOnly) &&
           file.read(16).startsWith("SQLite format 3");
}

// Without links in the way, though the file need not be there.
QString resolved(const QString& path) {
    const QFileInfo link(path);
    const QFileInfo target(link.isSymLink() ? link.symLinkTarget() : path);
    const QString folder = target.dir().canonicalPath();
    return folder.isEmpty() ? target.absoluteFilePath() : QDir(folder).filePath(target.fileName());
}

}  // namespace

std::optional<QString> garageThatOwns(const QString& path) {
    const QString name = resolved(path);
    for (const char* ending : {"-journal", "-wal", "-shm"}) {
        const QLatin1String end(ending);
        if (name.endsWith(end) && isDatabase(name.chopped(end.size())))
            return name.chopped(end.size());
    }
    const QLatin1String backups(".backups");
    for (QString folder = name; !QFileInfo(folder).isRoot(); folder = QFileInfo(folder).path())
        if (folder.endsWith(backups) && isDatabase(folder.chopped(backups.size())))
            return folder.chopped(backups.size());
    return std::nullopt;
}

}  // namespace wm::store
