// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/workbench/file_names.h"

#include <QFileInfo>
#include <QRegularExpression>

#include "core/store/store.h"

namespace wm::ui {

QString withEnding(const QString& path, const QString& ending) {
    const QString suffix = QFileInfo(path).suffix();
    const bool isNone = suffix.isEmpty() || suffix.front().isDigit();  // "sheet 2.5"
    return isNone ? path + ending : path;
}

QString asFileName(const QString& words) {
    QString name;
    for (const QChar letter : words.simplified()) {
        const bool isFine = letter.isPrint() && !QStringLiteral("/\\:*?\"<>|").contains(letter);
        name += isFine || letter.isSurrogate() ? letter : QChar(u'-');
    }
    // A dot in front would hide the file, a dash would make an option of it.
    while (name.startsWith(u'.') || name.startsWith(u'-'))
        name.remove(0, 1);
    return name;
}

QString endingOf(const QString& filter) {
    static const QRegularExpression kFirst(QStringLiteral("\\*\\.(\\w+)"));
    return kFirst.match(filter).captured(1);
}

bool isThere(const QString& path) {
    std::error_code none;
    return std::filesystem::exists(store::onDisk(path), none);
}

bool isFree(const QString& path) {
    return !isThere(path) || store::isEmptyFile(path);
}

QString whereItLies(const QString& path) {
    std::error_code none;
    const std::filesystem::path link = store::onDisk(path);
    if (!std::filesystem::is_symlink(link, none))
        return path;
    const std::filesystem::path real = std::filesystem::canonical(link, none);
    return none ? path : store::pathOf(real.native());
}

void takeBackUnfinished(const QString& path) {
    if (QFileInfo::exists(path + QStringLiteral("-journal")))
        store::File::open(path, store::OpenFor::Writing);
}

}  // namespace wm::ui
