// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/workbench/write_bytes.h"

#include <QFile>
#include <QFileInfo>
#include <QSaveFile>

#include "core/store/store.h"
#include "ui/words/error_words.h"
#include "ui/words/tr.h"
#include "ui/workbench/read_bytes.h"

namespace wm::ui {

namespace {

// `begin` once it is open, `finish` once all is in it.
template <class File, class Begin, class Finish>
WriteResult writeAll(File& file, const QByteArray& bytes, const Begin& begin, const Finish& finish) {
    if (!file.open(QIODevice::WriteOnly) || !begin())
        return {WriteResult::Outcome::NotAllowed, file.errorString()};
    if (file.write(bytes) != bytes.size() || !finish())
        return {WriteResult::Outcome::NotWritten, file.errorString()};
    return {};
}

bool holdsGarage(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) && isGarage(file.read(16));
}

}  // namespace

std::optional<QString> whyItStays(const QString& path) {
    if (const auto garage = store::garageThatOwns(path))
        return tr("that name belongs to the garage %1, for its journal and its backups")
            .arg(quoted(QFileInfo(*garage).fileName()));
    const QFileInfo target(path);
    if (target.isFile() && holdsGarage(path))
        return tr("a garage is in that file, and it stays");
    return std::nullopt;
}

WriteResult writeBytes(const QString& path, const QByteArray& bytes, const QString& like) {
    const QFileInfo target(path);
    if (auto why = whyItStays(path))
        return {WriteResult::Outcome::NotAllowed, std::move(*why)};
    if (target.exists() && !target.isFile()) {
        QFile file(path);
        return writeAll(
            file, bytes, [] { return true; }, [&file] { return file.flush(); });
    }
    QSaveFile file(path);
    const bool takesRights = !like.isEmpty() && !target.exists();
    return writeAll(
        file, bytes, [&] { return !takesRights || file.setPermissions(store::rightsOf(like)); },
        [&file] { return file.commit(); });
}

}  // namespace wm::ui
