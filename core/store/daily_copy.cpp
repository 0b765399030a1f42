// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QRegularExpression>
#include <QUuid>
#include <algorithm>
#include <chrono>

#include "core/store/copying.h"
#include "core/store/ladder.h"
#include "core/store/log.h"
#include "core/store/on_disk.h"
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

QString inFolder(const QString& folder, const QString& name) {
    return folder + QLatin1Char('/') + name;
}

// The names of plain files; links are none.
std::vector<QString> filesIn(const QString& folder) {
    std::vector<QString> names;
    std::error_code none;
    for (std::filesystem::directory_iterator at(onDisk(folder), none), end; !none && at != end;
         at.increment(none))
        if (std::filesystem::is_regular_file(at->symlink_status(none)))
            names.push_back(pathOf(at->path().filename().native()));
    std::sort(names.begin(), names.end());
    return names;
}

calendar::Date dayOf(const QDate& date) {
    return calendar::Date{static_cast<std::int32_t>(date.toJulianDay() - QDate(1970, 1, 1).toJulianDay())};
}

// "2026-05-16T18-30-05-r41-c7.backup": when it was taken by the clock, at which revision, and that six copies
// were written before it. Those of earlier programs have no such count: they come before all others.
std::optional<Copy> copyNamed(const QString& folder, const QString& name) {
    static const QRegularExpression form(QStringLiteral(
        "^(\\d{4}-\\d\\d-\\d\\d)T(\\d\\d)-(\\d\\d)-(\\d\\d)-r(\\d{1,18})(?:-c(\\d{1,18}))?\\.backup$"));
    const auto match = form.match(name);
    const QDate day = QDate::fromString(match.captured(1), Qt::ISODate);
    if (!match.hasMatch() || !day.isValid())
        return std::nullopt;
    const std::int64_t revision = match.captured(5).toLongLong();
    const QString at = QStringLiteral("%1T%2:%3:%4")
                           .arg(match.captured(1), match.captured(2), match.captured(3), match.captured(4));
    return Copy{{inFolder(folder, name), at, revision},
                {match.captured(6).toLongLong(), revision, dayOf(day)}};
}

// Newest first, by the order in which they were written. A folder that is a link is no folder of ours.
std::vector<Copy> copiesIn(const QString& folder) {
    std::vector<Copy> found;
    if (disk::isLink(folder))
        return found;
    for (const QString& name : filesIn(folder))
        if (auto copy = copyNamed(folder, name))
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
    if (disk::isLink(folder))
        throw Trouble{Why::Linked, {}};
    if (disk::isFolder(folder))
        return;
    // Another program may have made it just now.
    if (disk::makeFolder(folder, rights) && !disk::isFolder(folder))
        throw Trouble{Why::NoFolder, {}};
}

// What a killed program left. A copy takes seconds: what is a day older, or younger, than the one that is
// being made now belongs to nobody.
void clearUnfinished(const QString& folder, const QString& mine) {
    constexpr std::chrono::hours kDay{24};
    std::error_code unknown;
    const auto now = std::filesystem::last_write_time(onDisk(mine), unknown);
    for (const QString& name : filesIn(folder)) {
        if (unknown || !name.endsWith(kUnfinished))
            continue;
        const auto then = std::filesystem::last_write_time(onDisk(inFolder(folder, name)), unknown);
        if (!unknown && (then < now - kDay || then > now + kDay))
            disk::remove(inFolder(folder, name));
    }
}

void thinOut(const std::vector<Copy>& copies) {
    const std::vector<bool> kept = keptOnLadder(rungsOf(copies));
    for (std::size_t at = 0; at < copies.size(); ++at)
        if (!kept[at])
            disk::remove(copies[at].backup.path);
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
        // Two programs may be at it: each has a name of its own until its copy is whole.
        const QString part =
            inFolder(folder, QUuid::createUuid().toString(QUuid::WithoutBraces) + kUnfinished);
        const std::int64_t copied = copyChecked(db, part, rights, options);
        clearUnfinished(folder, part);
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
    const QString whole = inFolder(folder, name);
    // If another program is quicker by less than a look, it has copied the same.
    std::error_code trouble;
    if (!disk::exists(whole))
        std::filesystem::rename(onDisk(part), onDisk(whole), trouble);
    removeWithJournal(part);
    if (trouble && !disk::isFile(whole))
        throw Failure(SQLITE_IOERR, "the copy can't be named: " + trouble.message());
}

std::vector<Backup> File::backups() const {
    std::vector<Backup> all;
    for (Copy& copy : copiesIn(folderOf(parts_->path)))
        all.push_back(std::move(copy.backup));
    return all;
}

}  // namespace wm::store
