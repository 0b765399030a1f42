// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/book/book.h"
#include "core/store/own_schema.h"
#include "core/store/reading.h"
#include "core/store/store.h"
#include "core/store/writing.h"

namespace wm::store {

/// What a File is made of.
struct File::Parts {
    Parts(const QString& itsPath, Connection::Mode mode, const Options& its)
        : path(itsPath), options(its), db(path, mode, options), readOnly(db.readOnly()) {}

    void take(Picture picture) {
        if (ledger == nullptr)
            sessionFrom = picture.revision;
        ledger = std::make_shared<const picture::Ledger>(std::move(picture.ledger));
        revision = picture.revision;
    }
    [[nodiscard]] QString timeNow() const { return options.now().toString(Qt::ISODate); }
    [[nodiscard]] QString dayNow() const { return options.now().date().toString(Qt::ISODate); }

    /// The book of the picture on a day.
    const book::Book& bookOn(calendar::Date today);
    /// The change that the verb answers with on the present picture. NothingToDo if that has no rows.
    base::Result<picture::Change> say(const Verb& verb, calendar::Date today);
    /// Writes `said`; if another program has written since, the verb is asked again on the fresh picture and
    /// that answer is written.
    tl::expected<picture::Change, ApplyError> write(const Verb& verb, calendar::Date today,
                                                    picture::Change said, const base::Progress& progress);
    /// Inside a transaction. The changes for undo, or nothing if `progress` stopped it.
    std::optional<std::string> writeRows(const std::vector<picture::Row>& rows,
                                         const base::Progress& progress);
    tl::expected<std::string, ApplyError> turn(bool back, LastMachine last, Redo redo);
    /// Commits what leads to `next`. If that fails, takes the picture that stands in the file after all.
    void commit(Transaction& writing, std::int64_t next);
    bool standsAfterAll(std::int64_t next);
    [[nodiscard]] std::optional<std::string> turnText(bool back) const;
    /// Why nothing can be written by this clock, or nothing.
    [[nodiscard]] std::optional<ApplyError> clockTrouble() const;
    /// Another program may have been killed in a write while this file was open.
    void takeBackInterruptedWrite();
    void copyOnceADay();
    /// Gives a whole copy its name, unless another program has made one meanwhile.
    void nameCopy(const QString& part, const QString& folder, std::int64_t copied) const;

    QString path;
    Options options;
    Connection db;
    RowWriter writer{db};
    bool readOnly;
    std::shared_ptr<const picture::Ledger> ledger;
    std::optional<book::Book> book;  ///< of `ledger`, once a verb has asked; the next one takes over from it
    std::int64_t revision = 0;
    int takenBack = 0;
    std::int64_t sessionFrom = 0;  ///< undo goes back to this revision and no further
    std::optional<BackupTrouble> backupTrouble;
};

ApplyError errorOf(const Failure& failure);

/// Runs `act`, which answers a tl::expected<..., ApplyError>, and turns what it throws into its error.
template <class Act>
auto guarded(const Act& act) -> decltype(act()) {
    try {
        return act();
    } catch (const Failure& failure) {
        return tl::unexpected(errorOf(failure));
    } catch (const Foreign& part) {
        return tl::unexpected(ApplyError{ApplyError::Kind::Corrupt, {}, QString::fromUtf8(part.what())});
    } catch (const Lacking& part) {
        return tl::unexpected(ApplyError{ApplyError::Kind::Corrupt, {}, QString::fromUtf8(part.what())});
    } catch (const Unreadable& row) {
        return tl::unexpected(ApplyError{ApplyError::Kind::Corrupt, {}, QString::fromUtf8(row.what())});
    } catch (const std::exception& other) {
        return tl::unexpected(ApplyError{ApplyError::Kind::Failed, {}, QString::fromUtf8(other.what())});
    }
}

}  // namespace wm::store
