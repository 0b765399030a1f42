// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/resources.h"

#include <QDir>
#include <QFile>

// The resources sit in a static library: without this the linker leaves them out. It works at the global
// scope alone.
static void takeResourcesAlong() {
    Q_INIT_RESOURCE(witnessmark);
}

namespace wm::app {

std::vector<Resource> resources(const char* folder, const char* pattern) {
    takeResourcesAlong();
    std::vector<Resource> found;
    const QDir dir(QString(':') + folder);
    for (const QString& name : dir.entryList({pattern}, QDir::Files, QDir::Name)) {
        QFile file(dir.filePath(name));
        if (file.open(QIODevice::ReadOnly))
            found.push_back({name.toStdString(), file.readAll().toStdString()});
    }
    return found;
}

}  // namespace wm::app
