// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QRegularExpression>
#include <algorithm>
#include <map>

#include "core/store/log.h"
#include "core/store/migration.h"
#include "core/store/parts.h"
#include "core/store/row_shape.h"
#include "core/store/verb_history.h"

namespace wm::store {

namespace {

constexpr std::size_t kBackupsKept = 10;

QString folderOf(const QString& path) {
    return path + QStringLiteral(".backups");
}

// "2026-05-16T18-30-05-r41.backup": when it was taken, and at which revision.
std::vector<Backup> backupsIn(const QString& folder) {
    static const QRegularExpression form(
        QStringLiteral("^(\\d{4}-\\d\\d-\\d\\d)T(\\d\\d)-(\\d\\d)-(\\d\\d)-r(\\d+)\\.backup$"));
    std::vector<Backup> found;
    const QDir dir(folder);
    for (const QString& name : dir.entryList(QDir::Files, QDir::Name | QDir::Reversed)) {
        const auto match = form.match(name);
        if (match.hasMatch())
            found.push_back(
                {dir.filePath(name),
                 QStringLiteral("%1T%2:%3:%4")
                     .arg(match.captured(1), match.captured(2), match.captured(3), match.captured(4)),
                 match.captured(5).toLongLong()});
    }
    return found;
}

void removeWithJournal(const QString& path) {
    QFile::remove(path);
    QFile::remove(path + QStringLiteral("-journal"));
}

// Copies `from` to a new file at `path` and looks that the copy is whole. Leaves nothing if it isn't.
std::int64_t copyChecked(const Connection& from, const QString& path, const Options& options) {
    try {
        const Connection to(path, Connection::Mode::Creating, options);
        copyDatabase(from, to);
        quickCheck(to);
        return revisionOf(to);
    } catch (const Failure&) {
        removeWithJournal(path);
        throw;
    }
}

std::int64_t rowCount(const Connection& connection) {
    std::int64_t rows = 0;
    eachRowType([&](auto row) {
        rows += numberOf(connection.handle(),
                         "SELECT count(*) FROM \"" + std::string(decltype(row)::kTable) + "\"");
    });
    return rows;
}

struct LastWord {
    bool stands = false;
    LogLine line;
};

// How each verb stands at the end of a log.
std::map<std::int64_t, LastWord> lastWords(const std::vector<LogLine>& log) {
    std::map<std::int64_t, LastWord> words;
    for (const LogLine& line : log)
        words[line.ofVerb] = {line.what != "undone", line};
    return words;
}

std::vector<LostVerb> lostBetween(const std::vector<LogLine>& then, const std::vector<LogLine>& now) {
    const auto before = lastWords(then);
    std::vector<LogLine> changed;
    std::map<std::int64_t, bool> standsNow;
    for (const auto& [verb, word] : lastWords(now)) {
        const auto old = before.find(verb);
        const bool stoodThen = old != before.end() && old->second.stands;
        if (word.stands != stoodThen)
            changed.push_back(word.line);
    }
    std::sort(changed.begin(), changed.end(),
              [](const LogLine& a, const LogLine& b) { return a.revision > b.revision; });
    std::vector<LostVerb> lost;
    for (const LogLine& line : changed)
        lost.push_back({QString::fromStdString(line.text), QString::fromStdString(line.writtenAt),
                        line.what == "undone"});
    return lost;
}

void requireOurs(const Connection& connection) {
    if (numberOf(connection.handle(), "PRAGMA application_id") != kApplicationId)
        throw Failure(SQLITE_NOTADB, "not a copy of such a file");
    quickCheck(connection);
}

}  // namespace

void File::Parts::copyOnceADay() {
    // A file that holds nothing yet needs no copy.
    if (!options.dailyBackup || revision == 0)
        return;
    const QString folder = folderOf(path);
    std::vector<Backup> there = backupsIn(folder);
    if (!there.empty() && there.front().takenAt.startsWith(dayNow()))
        return;
    try {
        if (!QDir().mkpath(folder))
            throw Failure(SQLITE_CANTOPEN, "the folder for copies can't be made");
        const QDir dir(folder);
        const QString part = dir.filePath(QStringLiteral("unfinished"));
        removeWithJournal(part);
        const std::int64_t copied = copyChecked(db, part, options);
        const QString name = options.now().toString(QStringLiteral("yyyy-MM-ddTHH-mm-ss")) +
                             QStringLiteral("-r%1.backup").arg(copied);
        if (!QFile::rename(part, dir.filePath(name)))
            throw Failure(SQLITE_IOERR, "the copy can't be named");
        there = backupsIn(folder);
        for (std::size_t old = kBackupsKept; old < there.size(); ++old)
            QFile::remove(there[old].path);
        backupTrouble.reset();
    } catch (const Failure& failure) {
        warn("no daily copy of {}: {}", path.toStdString(), failure.what());
        backupTrouble = QString::fromUtf8(failure.what());
    }
}

std::vector<Backup> File::backups() const {
    return backupsIn(folderOf(parts_->path));
}

tl::expected<BackupPreview, ApplyError> File::preview(const Backup& backup) const {
    return guarded([&]() -> tl::expected<BackupPreview, ApplyError> {
        const Connection then(backup.path, Connection::Mode::ReadOnly, parts_->options);
        requireOurs(then);
        return BackupPreview{lostBetween(readLog(then), readLog(parts_->db)), rowCount(parts_->db),
                             rowCount(then)};
    });
}

tl::expected<void, ApplyError> File::restoreTo(const Backup& backup, const QString& path) const {
    return guarded([&]() -> tl::expected<void, ApplyError> {
        QFile claim(path);
        if (!claim.open(QIODevice::WriteOnly | QIODevice::NewOnly)) {
            if (QFileInfo::exists(path))
                return tl::unexpected(ApplyError{
                    ApplyError::Kind::Refused, {base::Fault::Duplicate, "path", path.toStdString(), {}}, {}});
            throw Failure(SQLITE_CANTOPEN, claim.errorString().toStdString());
        }
        claim.close();
        try {
            const Connection then(backup.path, Connection::Mode::ReadOnly, parts_->options);
            requireOurs(then);
            copyChecked(then, path, parts_->options);
        } catch (const Failure&) {
            removeWithJournal(path);
            throw;
        }
        return {};
    });
}

}  // namespace wm::store
