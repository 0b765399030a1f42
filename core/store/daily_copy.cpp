// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QRegularExpression>
#include <QUuid>
#include <algorithm>

#include "core/store/copying.h"
#include "core/store/ladder.h"
#include "core/store/log.h"
#include "core/store/parts.h"

namespace wm::store {

namespace {

using Why = BackupTrouble::Kind;

const QString kUnfinished = QStringLiteral(".unfinished");

struct Copy {
    Backup backup;
    LadderCopy rung;
};

// Why no copy can be made, on its way out of here.
struct Trouble {
    Why kind;
    QString detail;
};

QString folderOf(const QString& path) {
    return path + QStringLiteral(".backups");
}

calendar::Date dayOf(const QDate& date) {
    return calendar::Date{static_cast<std::int32_t>(date.toJulianDay() - QDate(1970, 1, 1).toJulianDay())};
}

// "2026-05-16T18-30-05-r41-c7.backup": when it was taken by the clock, at which revision, and that six copies
// were written before it. Those of earlier programs have no such count: they come before all others.
std::optional<Copy> copyNamed(const QDir& folder, const QString& name) {
    static const QRegularExpression form(QStringLiteral(
        "^(\\d{4}-\\d\\d-\\d\\d)T(\\d\\d)-(\\d\\d)-(\\d\\d)-r(\\d{1,18})(?:-c(\\d{1,18}))?\\.backup$"));
    const auto match = form.match(name);
    const QDate day = QDate::fromString(match.captured(1), Qt::ISODate);
    if (!match.hasMatch() || !day.isValid())
        return std::nullopt;
    const std::int64_t revision = match.captured(5).toLongLong();
    const QString at = QStringLiteral("%1T%2:%3:%4")
                           .arg(match.captured(1), match.captured(2), match.captured(3), match.captured(4));
    return Copy{{folder.filePath(name), at, revision},
                {match.captured(6).toLongLong(), revision, dayOf(day)}};
}

// Newest first, by the order in which they were written. A folder that is a link is no folder of ours.
std::vector<Copy> copiesIn(const QString& folder) {
    std::vector<Copy> found;
    if (QFileInfo(folder).isSymLink())
        return found;
    const QDir dir(folder);
    for (const QString& name : dir.entryList(QDir::Files | QDir::NoSymLinks))
        if (auto copy = copyNamed(dir, name))
            found.push_back(std::move(*copy));
    std::sort(found.begin(), found.end(),
              [](const Copy& a, const Copy& b) { return writtenAfter(a.rung, b.rung); });
    return found;
}

std::vector<LadderCopy> rungsOf(const std::vector<Copy>& copies) {
    std::vector<LadderCopy> rungs;
    for (const Copy& copy : copies)
        rungs.push_back(copy.rung);
    return rungs;
}

// Whoever may read the file may look into the folder; whoever may write it may change what is in there.
QFileDevice::Permissions folderRights(QFileDevice::Permissions file) {
    QFileDevice::Permissions rights =
        file | QFileDevice::ReadOwner | QFileDevice::WriteOwner | QFileDevice::ExeOwner;
    if (file.testFlag(QFileDevice::ReadGroup))
        rights |= QFileDevice::ExeGroup;
    if (file.testFlag(QFileDevice::ReadOther))
        rights |= QFileDevice::ExeOther;
    return rights;
}

void makeFolder(const QString& folder, QFileDevice::Permissions rights) {
    const QFileInfo info(folder);
    if (info.isSymLink())
        throw Trouble{Why::Linked, {}};
    if (info.isDir())
        return;
    // Another program may have made it just now.
    if (!QDir().mkdir(folder, rights) && !QFileInfo(folder).isDir())
        throw Trouble{Why::NoFolder, {}};
}

// What a killed program left. A copy takes seconds: what is a day older, or younger, than the one that is
// being made now belongs to nobody.
void clearUnfinished(const QDir& dir, const QString& mine) {
    constexpr qint64 kDay = 86'400;
    const QDateTime now = QFileInfo(mine).lastModified();
    for (const QFileInfo& left : dir.entryInfoList({QLatin1Char('*') + kUnfinished}, QDir::Files))
        if (std::abs(left.lastModified().secsTo(now)) > kDay)
            QFile::remove(left.filePath());
}

void thinOut(const std::vector<Copy>& copies) {
    const std::vector<bool> kept = keptOnLadder(rungsOf(copies));
    for (std::size_t at = 0; at < copies.size(); ++at)
        if (!kept[at])
            QFile::remove(copies[at].backup.path);
}

Why whyNoCopy(const Failure& failure) {
    switch (failure.primaryCode()) {
        case SQLITE_FULL:
            return Why::NoSpace;
        case SQLITE_CORRUPT:
        case SQLITE_NOTADB:
            return Why::NotSound;
        case SQLITE_CANTOPEN:
        case SQLITE_READONLY:
        case SQLITE_PERM:
            return Why::NoFolder;
        default:
            return Why::Failed;
    }
}

}  // namespace

void File::Parts::copyOnceADay() {
    // A file that holds nothing yet needs no copy.
    if (!options.dailyBackup || revision == 0)
        return;
    const QString folder = folderOf(path);
    try {
        const calendar::Date today = dayOf(options.now().date());
        // In this order: whoever copied in between did so at this revision or an earlier one.
        const std::vector<LadderCopy> there = rungsOf(copiesIn(folder));
        if (!isCopyDue(there, revisionOf(db), today))
            return;
        const QFileDevice::Permissions rights = rightsOf(path);
        makeFolder(folder, folderRights(rights));
        const QDir dir(folder);
        // Two programs may be at it: each has a name of its own until its copy is whole.
        const QString part = dir.filePath(QUuid::createUuid().toString(QUuid::WithoutBraces) + kUnfinished);
        const std::int64_t copied = copyChecked(db, part, rights, options);
        clearUnfinished(dir, part);
        nameCopy(part, folder, copied);
        thinOut(copiesIn(folder));
        backupTrouble.reset();
    } catch (const Failure& failure) {
        warn("no daily copy of {}: {}", path.toStdString(), failure.what());
        backupTrouble = BackupTrouble{whyNoCopy(failure), folder, QString::fromUtf8(failure.what())};
    } catch (const Trouble& trouble) {
        warn("no daily copy of {}", path.toStdString());
        backupTrouble = BackupTrouble{trouble.kind, folder, trouble.detail};
    }
}

void File::Parts::nameCopy(const QString& part, const QString& folder, std::int64_t copied) const {
    const std::vector<LadderCopy> there = rungsOf(copiesIn(folder));
    // Another program was quicker: one will do.
    if (!isCopyDue(there, copied, dayOf(options.now().date())))
        return removeWithJournal(part);
    const std::int64_t next = there.empty() ? 1 : there.front().order + 1;
    const QString name = QStringLiteral("%1-r%2-c%3.backup")
                             .arg(options.now().toString(QStringLiteral("yyyy-MM-ddTHH-mm-ss")))
                             .arg(copied)
                             .arg(next);
    const QString whole = QDir(folder).filePath(name);
    if (QFile::rename(part, whole))
        return;
    removeWithJournal(part);
    // Another program was quicker by less than a look, and copied the same.
    if (QFileInfo(whole).isFile())
        return;
    throw Failure(SQLITE_IOERR, "the copy can't be named");
}

std::vector<Backup> File::backups() const {
    std::vector<Backup> all;
    for (Copy& copy : copiesIn(folderOf(parts_->path)))
        all.push_back(std::move(copy.backup));
    return all;
}

}  // namespace wm::store
