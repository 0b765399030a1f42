// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFileInfo>
#include <algorithm>
#include <string_view>

#include "core/store/copying.h"
#include "core/store/log.h"
#include "core/store/migration.h"
#include "core/store/on_disk.h"
#include "core/store/opening.h"
#include "core/store/own_schema.h"
#include "core/store/parts.h"
#include "core/store/recovery.h"
#include "core/store/seal.h"

namespace wm::store {

OpenOutcome outcomeOf(const Failure& failure) {
    switch (failure.primaryCode()) {
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            return OpenOutcome::Locked;
        case SQLITE_FULL:
            return OpenOutcome::NoSpace;
        case SQLITE_INTERRUPT:
            return OpenOutcome::Endless;
        case SQLITE_CORRUPT:
        case SQLITE_NOTADB:
        case SQLITE_ERROR:  // a table or column that every file of ours has is not there
        case SQLITE_CONSTRAINT:
        case SQLITE_MISMATCH:
        case SQLITE_TOOBIG:  // a value beyond the limits of harden(), which nothing of ours writes
            return OpenOutcome::Corrupt;
        default:
            return OpenOutcome::NoAccess;
    }
}

bool isOurs(const Connection& connection) {
    try {
        return numberOf(connection.handle(), "PRAGMA application_id") == kApplicationId;
    } catch (const Failure& failure) {
        const bool noDatabase =
            failure.primaryCode() == SQLITE_NOTADB || failure.primaryCode() == SQLITE_CORRUPT;
        if (noDatabase && !connection.headerIsOurs())
            return false;
        throw;
    }
}

OpenReport refusal(const QString& path, OpenOutcome outcome, const QString& detail) {
    warn("{} was not opened: {}", path.toStdString(), detail.toStdString());
    OpenReport report;
    report.outcome = outcome;
    report.path = path;
    report.detail = detail;
    return report;
}

std::optional<OpenReport> refusedAtSight(const QString& path) {
    if (!disk::exists(path)) {
        // Qt names files in UTF-8; what it could not read of a name it shows by this character.
        const bool isOddName = path.contains(QChar::ReplacementCharacter);
        return refusal(path, OpenOutcome::NoAccess,
                       isOddName ? QStringLiteral("name") : QStringLiteral("missing"));
    }
    if (disk::isFolder(path))
        return refusal(path, OpenOutcome::NoAccess, QStringLiteral("folder"));
    // To open a pipe is to wait for whoever writes into it.
    if (!disk::isFile(path))
        return refusal(path, OpenOutcome::NoAccess, QStringLiteral("device"));
    return refusedForWhatStandsBeside(path);
}

// SQLite only says that it can't open something.
std::optional<OpenReport> refusedForWhatStandsBeside(const QString& path) {
    for (const char* ending : {"-journal", "-wal"}) {
        const QString beside = path + QLatin1String(ending);
        const char* what = disk::isLink(beside)                            ? "beside link"
                           : disk::isFolder(beside)                        ? "beside folder"
                           : disk::exists(beside) && !disk::isFile(beside) ? "beside device"
                                                                           : nullptr;
        if (what == nullptr)
            continue;
        OpenReport report = refusal(path, OpenOutcome::NoAccess, QLatin1String(what));
        report.beside = QFileInfo(beside).fileName();
        return report;
    }
    return std::nullopt;
}

namespace {

File::Opened refused(const QString& path, OpenOutcome outcome, const QString& detail) {
    return {refusal(path, outcome, detail), nullptr};
}

// Looks at the version and brings the file up to it where that is wanted. False if it must stay shut.
bool settleVersion(File::Opened& answer, const Connection& connection, const QString& path, OpenFor purpose,
                   const Options& options, bool& readOnly) {
    OpenReport& report = answer.report;
    const int ours = latestVersion(options.schema);
    report.fromVersion = versionOf(connection);
    if (report.fromVersion == ours)
        return true;
    if (report.fromVersion > ours) {
        const bool mayRead = numberOf(connection.handle(), "SELECT oldest_reader FROM file_state") <= ours;
        report.outcome = mayRead ? OpenOutcome::NewerReadOnly : OpenOutcome::NewerRefused;
        report.detail =
            QString::fromStdString(textOf(connection.handle(), "SELECT needs_program FROM file_state"));
        readOnly = true;
        return mayRead;
    }
    if (report.fromVersion < 1)
        throw Failure(SQLITE_CORRUPT, "a file without a version");
    if (purpose == OpenFor::ReadingOnly || readOnly) {
        report.outcome = OpenOutcome::NoAccess;
        report.detail = QStringLiteral("older");
        return false;
    }
    if (const auto altered = alteredRows(connection, 1); !altered.empty())
        throw Altered(altered.front());
    report.backup = copyBeforeMigration(connection, path, options);
    report.steps = migrate(connection, options.schema);
    report.outcome = OpenOutcome::Migrated;
    return true;
}

}  // namespace

File::File(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
File::~File() = default;

File::Opened File::open(const QString& path, OpenFor purpose) {
    return open(path, purpose, Options{});
}

File::Opened File::open(const QString& path, OpenFor purpose, const Options& options) {
    if (auto no = refusedAtSight(path))
        return {std::move(*no), nullptr};
    const Recovery recovery = takeBackInterrupted(path, options);
    if (recovery.outcome == Recovery::Outcome::Impossible)
        return refused(path, OpenOutcome::HalfWritten, recovery.detail);
    Opened answer;
    answer.report.path = path;
    answer.report.tookBack = recovery.outcome == Recovery::Outcome::TakenBack;
    try {
        const auto mode =
            purpose == OpenFor::Writing ? Connection::Mode::Writing : Connection::Mode::ReadOnly;
        auto parts = std::make_unique<Parts>(path, mode, options);
        if (!isOurs(parts->db))
            return refused(path, OpenOutcome::NotOurs, {});
        parts->db.harden();
        requireOwnSchema(parts->db, options.schema);
        // A newer file is only read, and what its schema says is not run.
        if (versionOf(parts->db) <= latestVersion(options.schema))
            parts->db.trustSchema();
        if (!parts->db.endsWithAPage())
            throw Failure(SQLITE_CORRUPT, "the file was cut short");
        quickCheck(parts->db);
        if (!parts->readOnly)
            parts->db.setDurability(options.durability);
        if (!settleVersion(answer, parts->db, path, purpose, options, parts->readOnly))
            return answer;
        parts->take(readPicture(parts->db));
        answer.file.reset(new File(std::move(parts)));
        return answer;
    } catch (const Failure& failure) {
        return refused(path, outcomeOf(failure), QString::fromUtf8(failure.what()));
    } catch (const Foreign& part) {
        return refused(path, OpenOutcome::Foreign, QString::fromUtf8(part.what()));
    } catch (const Lacking& part) {
        return refused(path, OpenOutcome::Lacking, QString::fromUtf8(part.what()));
    } catch (const Altered& row) {
        return refused(path, OpenOutcome::Altered, QString::fromUtf8(row.what()));
    } catch (const Unreadable& row) {
        // A newer program may know words that this one doesn't, whatever it said about old readers.
        if (answer.report.outcome == OpenOutcome::NewerReadOnly)
            return refused(path, OpenOutcome::NewerRefused, answer.report.detail);
        return refused(path, OpenOutcome::Corrupt, QString::fromUtf8(row.what()));
    }
}

File::Opened File::create(const QString& path) {
    return create(path, Options{});
}

File::Opened File::create(const QString& path, const Options& options) {
    if (disk::isFolder(path))
        return refused(path, OpenOutcome::NoAccess, QStringLiteral("folder"));
    if (garageThatOwns(path))
        return refused(path, OpenOutcome::NoAccess, QStringLiteral("reserved"));
    if (auto no = refusedForWhatStandsBeside(path))
        return {std::move(*no), nullptr};
    // Claims the name, so that nothing that is there already can be written over. A file with nothing in it
    // is what is left of one whose making was broken off, or is being made: whoever writes first has it.
    const QFileDevice::Permissions all = QFileDevice::ReadOwner | QFileDevice::WriteOwner |
                                         QFileDevice::ReadGroup | QFileDevice::WriteGroup |
                                         QFileDevice::ReadOther | QFileDevice::WriteOther;
    if (const auto trouble = disk::makeFile(path, all); trouble && !isEmptyFile(path))
        return refused(
            path, OpenOutcome::NoAccess,
            disk::exists(path) ? QStringLiteral("exists") : QString::fromStdString(trouble.message()));
    try {
        auto parts = std::make_unique<Parts>(path, Connection::Mode::Creating, options);
        parts->db.harden();
        parts->db.setDurability(options.durability);
        layOut(parts->db, options.schema);
        parts->db.trustSchema();
        parts->take(readPicture(parts->db));
        Opened answer;
        answer.report.path = path;
        answer.report.fromVersion = latestVersion(options.schema);
        answer.file.reset(new File(std::move(parts)));
        return answer;
    } catch (const TakenName&) {
        return refused(path, OpenOutcome::NoAccess, QStringLiteral("exists"));
    } catch (const Failure& failure) {
        // Another program makes it.
        if (outcomeOf(failure) != OpenOutcome::Locked)
            discard(path);
        return refused(path, outcomeOf(failure), QString::fromUtf8(failure.what()));
    }
}

void File::discard(const QString& path) {
    removeWithJournal(path);
}

}  // namespace wm::store
