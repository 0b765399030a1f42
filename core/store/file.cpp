// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QRandomGenerator>
#include <utility>

#include "core/picture/soundness.h"
#include "core/store/log.h"
#include "core/store/parts.h"
#include "core/store/recorder.h"
#include "core/store/recovery.h"
#include "core/store/seal_total.h"
#include "core/store/verb_history.h"

namespace wm::store {

namespace {

constexpr std::size_t kRowsBetweenReports = 256;

ApplyError::Kind kindOf(const Failure& failure) {
    switch (failure.primaryCode()) {
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            return ApplyError::Kind::Locked;
        case SQLITE_FULL:
            return ApplyError::Kind::NoSpace;
        case SQLITE_READONLY:
        case SQLITE_PERM:
        case SQLITE_AUTH:
        case SQLITE_CANTOPEN:  // the journal beside the file can't be made
            return ApplyError::Kind::ReadOnly;
        case SQLITE_CORRUPT:
        case SQLITE_NOTADB:
            return ApplyError::Kind::Corrupt;
        case SQLITE_INTERRUPT:
            return ApplyError::Kind::Endless;
        default:
            return ApplyError::Kind::Failed;
    }
}

ApplyError refusal(base::Error error) {
    return {ApplyError::Kind::Refused, std::move(error), {}};
}

}  // namespace

ApplyError errorOf(const Failure& failure) {
    warn("{}", failure.what());
    return {kindOf(failure), {}, QString::fromUtf8(failure.what())};
}

const book::Book& File::Parts::bookOn(calendar::Date today) {
    if (!book)
        book.emplace(ledger, today);
    else if (&book->ledger() != ledger.get() || book->today() != today)
        book = book::Book(ledger, today, *book);
    return *book;
}

base::Result<picture::Change> File::Parts::say(const Verb& verb, calendar::Date today) {
    base::Result<picture::Change> change = verb(verbs::VerbContext{bookOn(today), randomIds()});
    if (change && change->rows.empty())
        return base::refuse(base::Fault::NothingToDo, "verb");
    // What is out of bounds would shut the file for good: it could not be read again.
    if (change)
        if (auto error = picture::beyondBounds(change->rows))
            return tl::unexpected<base::Error>{*std::move(error)};
    return change;
}

QString File::path() const {
    return parts_->path;
}
bool File::readOnly() const {
    return parts_->readOnly;
}
std::shared_ptr<const picture::Ledger> File::ledger() const {
    return parts_->ledger;
}
std::optional<BackupTrouble> File::backupTrouble() const {
    return parts_->backupTrouble;
}

int File::takenBack() const {
    return parts_->takenBack;
}

std::optional<ApplyError> File::Parts::clockTrouble() const {
    static constexpr int kFirstYear = 1900;
    static constexpr int kLastYear = 2199;
    const QDate day = options.now().date();
    if (kFirstYear <= day.year() && day.year() <= kLastYear)
        return std::nullopt;
    // ISO dates end with the year 9999.
    const QString shown = day.toString(QStringLiteral("yyyy-MM-dd"));
    return ApplyError{ApplyError::Kind::Clock, {}, shown.isEmpty() ? QString::number(day.year()) : shown};
}

void File::Parts::takeBackInterruptedWrite() {
    if (takeBackInterrupted(path, options).outcome == Recovery::Outcome::TakenBack)
        ++takenBack;
}

bool File::refresh() {
    parts_->takeBackInterruptedWrite();
    const auto moved = guarded([this]() -> tl::expected<bool, ApplyError> {
        Transaction reading(parts_->db, Transaction::Kind::Reading);
        if (revisionOf(parts_->db) == parts_->revision)
            return false;
        parts_->take(readPictureHere(parts_->db));
        reading.commit();
        return true;
    });
    return moved.value_or(false);
}

tl::expected<picture::Change, ApplyError> File::apply(const Verb& verb, calendar::Date today,
                                                      const base::Progress& progress) {
    if (parts_->readOnly)
        return tl::unexpected(ApplyError{ApplyError::Kind::ReadOnly, {}, {}});
    if (auto trouble = parts_->clockTrouble())
        return tl::unexpected(*std::move(trouble));
    parts_->takeBackInterruptedWrite();
    return guarded([&]() -> tl::expected<picture::Change, ApplyError> {
        // What the screen shows may be what makes the verb say no: look again before that is believed.
        auto first = parts_->say(verb, today);
        if (!first && refresh())
            first = parts_->say(verb, today);
        if (!first)
            return tl::unexpected(refusal(first.error()));
        parts_->copyOnceADay();
        return parts_->write(verb, today, *std::move(first), progress);
    });
}

tl::expected<picture::Change, ApplyError> File::Parts::write(const Verb& verb, calendar::Date today,
                                                             picture::Change said,
                                                             const base::Progress& progress) {
    Transaction writing(db, Transaction::Kind::Writing, options.durability);
    base::Result<picture::Change> change = std::move(said);
    if (revisionOf(db) != revision) {
        take(readPictureHere(db));
        change = say(verb, today);
    }
    if (!change)
        return tl::unexpected(refusal(change.error()));
    const auto changes = writeRows(change->rows, progress);
    if (!changes)
        return tl::unexpected(refusal({base::Fault::Stopped, "entry", {}, {}}));
    const std::int64_t next = revision + 1;
    logVerb(db, {next, "done", next, change->text, timeNow().toStdString()});
    keepForUndo(db, next, dayNow().toStdString(), *changes);
    setRevision(db, next);
    moveTotal(db, *changes);
    auto after = std::make_shared<const picture::Ledger>(ledger->with(*change));
    commit(writing, next);
    ledger = std::move(after);
    revision = next;
    return *std::move(change);
}

std::optional<std::string> File::Parts::writeRows(const std::vector<picture::Row>& rows,
                                                  const base::Progress& progress) {
    const Recorder recorder(db);
    for (std::size_t at = 0; at < rows.size(); ++at) {
        if (progress && at % kRowsBetweenReports == 0 && !progress(at, rows.size()))
            return std::nullopt;
        writer.write(rows[at]);
    }
    if (progress && !progress(rows.size(), rows.size()))
        return std::nullopt;
    return recorder.changes();
}

void File::Parts::commit(Transaction& writing, std::int64_t next) {
    try {
        writing.commit();
    } catch (const Failure&) {
        writing.rollBack();
        if (!standsAfterAll(next))
            throw;
    }
}

// The last sync of a commit comes after the point of no return: if it alone failed, the change is in the file
// but not yet safe there. A second commit makes it so. If that can't be had either, the picture at least
// shows what stands.
bool File::Parts::standsAfterAll(std::int64_t next) {
    try {
        Transaction again(db, Transaction::Kind::Writing);
        if (revisionOf(db) != next)
            return false;
        setRevision(db, next);
        again.commit();
        return true;
    } catch (const Failure& failure) {
        warn("a failed commit can't be settled: {}", failure.what());
    }
    try {
        Picture now = readPicture(db);
        if (now.revision != revision)
            take(std::move(now));
    } catch (const std::exception& other) {
        warn("and the file can't be read: {}", other.what());
    }
    return false;
}

base::IdSource randomIds() {
    return [] {
        // 63 bits, and not zero.
        for (;;) {
            const auto value = static_cast<std::int64_t>(QRandomGenerator::system()->generate64() &
                                                         0x7FFF'FFFF'FFFF'FFFFULL);
            if (value > 0)
                return value;
        }
    };
}

}  // namespace wm::store
