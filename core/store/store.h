// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFileDevice>
#include <QString>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/book/book.h"
#include "core/picture/ledger.h"
#include "core/verbs/verbs.h"

/// The public face of the store. SQLite and Qt Sql stay behind it.
namespace wm::store {

/// How opening a file went. The first three give a File, the others say why not.
enum class OpenOutcome : std::uint8_t {
    Opened,
    Migrated,       ///< brought to this version; a verified copy of the old file stands beside it
    NewerReadOnly,  ///< written by a newer program that says this one may read it
    NewerRefused,   ///< `detail` names the version that is needed
    NotOurs,        ///< another program's database, or no database
    Corrupt,        ///< `detail` says what the check found
    Locked,         ///< another program holds it
    NoAccess,       ///< no right to read it, or it is no plain file, or it is not there; `detail` says which.
                    ///< "beside folder", "beside link", "beside device": what `beside` names is in the way
    NoSpace,
    HalfWritten,  ///< a write was interrupted, and it can't be taken back where the file lies
    Foreign,      ///< holds what no program of ours puts there; `detail` names it. factsOf() takes its facts
    Lacking,      ///< a trigger, an index or a table without facts is gone; `detail` names it. The same
    Altered,      ///< a row is not as it was written; `detail` names it. factsOf() takes the rows as they are
    Endless       ///< reading it came to no end and was broken off
};

enum class OpenFor : std::uint8_t { Writing, ReadingOnly };

struct OpenReport {
    OpenOutcome outcome = OpenOutcome::Opened;
    QString path;
    QString detail;  ///< the system's own words, or a version; for NewerRefused the program that is needed
    QString backup;  ///< the copy made before migrating
    QString beside;  ///< the name beside the file that its journal needs and something else has
    bool tookBack = false;  ///< a write that a crash had interrupted was taken back
    int fromVersion = 0;
    std::vector<QString> steps;  ///< what the migration did
};

/// Why a verb was not written. Refused: the verb itself said no. Stale: the file moved on since the words of
/// undo were shown; look again. ReadOnly: the file may not be written. Corrupt: the file is damaged. Endless:
/// a statement came to no end and was broken off. Clock: it shows a day (`detail`) that no entry can have.
/// Failed: anything else that the system refused. The file is as it was; only if the disc failed in the very
/// last step of a commit, and goes on failing, may the verb stand all the same: ledger() then shows it.
struct ApplyError {
    enum class Kind : std::uint8_t {
        Refused,
        Stale,
        ReadOnly,
        Locked,
        NoSpace,
        Corrupt,
        Endless,
        Clock,
        UndoDamaged,  ///< what undo keeps no longer fits the file, which is sound
        Failed
    } kind = Kind::Refused;
    base::Error error{};  ///< Refused: what the verb said on the fresh book
    QString detail;       ///< the database's own words, for the log
};

/// A verb as a function of the book that it is checked on: called once for the picture on the screen and
/// again, in the write transaction, if the file has moved on since (a second window, a headless verb).
using Verb = verbs::Verb;

struct Backup {
    QString path;
    QString takenAt;  ///< ISO date and time
    std::int64_t revision = 0;
};

/// Why a change was written without a copy of the file before it.
struct BackupTrouble {
    enum class Kind : std::uint8_t {
        Linked,    ///< the folder for copies is a link; what it leads to may be anybody's
        NoFolder,  ///< it can't be made, or not be written
        NoSpace,
        NotSound,  ///< the copy, or the file itself, did not pass its check
        Failed
    } kind = Kind::Failed;
    QString folder;
    QString detail;  ///< in the system's own words
};

/// A verb that going back to a backup would lose, or (`comesBack`) one that was undone since then and that
/// would stand again.
struct LostVerb {
    QString text;
    QString writtenAt;  ///< ISO date and time
    bool comesBack = false;
};

/// What going back to a backup would lose.
struct BackupPreview {
    std::vector<LostVerb> lost;  ///< newest first
    std::int64_t rowsNow = 0;
    std::int64_t rowsThen = 0;
};

/// Whether undo may take back what brought the only machine of a garage.
enum class LastMachine : std::uint8_t { Stays, MayGo };
/// Whether what undo takes back can be said again. A sheet that did not come out can't: it has no paper.
enum class Redo : std::uint8_t { May, Never };

struct Options;  ///< what tests may change (core/store/options.h)

/// One open file. Every call is a whole transaction or none. Not for sharing between threads; needs a
/// QCoreApplication, as Qt's database drivers do.
class File {
  public:
    struct Opened;
    static Opened open(const QString& path, OpenFor purpose);
    static Opened open(const QString& path, OpenFor purpose, const Options& options);
    /// Makes a new, empty file. Refuses to overwrite (outcome NoAccess, detail says so).
    static Opened create(const QString& path);
    static Opened create(const QString& path, const Options& options);
    /// Takes a file away that was just made and came to nothing, with what SQLite left beside it.
    static void discard(const QString& path);
    ~File();
    File(const File&) = delete;
    File& operator=(const File&) = delete;

    [[nodiscard]] QString path() const;
    /// True if it was opened so, or if the system or a newer program lets it only be read.
    [[nodiscard]] bool readOnly() const;
    /// The picture as last read or written.
    [[nodiscard]] std::shared_ptr<const picture::Ledger> ledger() const;
    /// Re-reads if another program wrote; true if the picture changed. False, and the old picture stays, if
    /// it can't be read just now.
    bool refresh();
    /// How many writes that another program was killed in have been taken back since this file was opened.
    [[nodiscard]] int takenBack() const;

    /// Checks the verb, writes its change in one transaction, and keeps what undo needs. `today` for the
    /// book. `progress` counts the rows and is asked once more when all are written; stopped by it, the verb
    /// is refused with Stopped and the file is as it was.
    tl::expected<picture::Change, ApplyError> apply(const Verb& verb, calendar::Date today,
                                                    const base::Progress& progress = {});

    /// The words of the last verb that undo would take back, or nothing. Undo goes back to the moment when
    /// this file was opened, and no further than twelve hours.
    [[nodiscard]] std::optional<std::string> undoText() const;
    [[nodiscard]] std::optional<std::string> redoText() const;
    /// MustAnswer "last machine" if nothing but an empty garage would be left and that is not wanted.
    tl::expected<std::string, ApplyError> undo(LastMachine last = LastMachine::Stays, Redo redo = Redo::May);
    tl::expected<std::string, ApplyError> redo();
    /// Undo goes back beyond this opening: for whoever has no session, like a verb on the command line.
    void reachBack();
    /// Undo ends here: a sheet was printed, an export left the program, a whole file was taken in.
    tl::expected<void, ApplyError> endUndo();

    /// Ids of facts whose text holds all words of `query`, each word as a beginning; best match first.
    /// Nothing in the query is syntax.
    [[nodiscard]] std::vector<std::int64_t> search(const QString& query, int most) const;

    /// The copies in `<path>.backups`, in the order of writing, newest first: one before the first change of
    /// each day, thinned out as core/store/ladder.h has it.
    [[nodiscard]] std::vector<Backup> backups() const;
    /// Why the last daily copy could not be made, or nothing. Verbs are written all the same.
    [[nodiscard]] std::optional<BackupTrouble> backupTrouble() const;
    [[nodiscard]] tl::expected<BackupPreview, ApplyError> preview(const Backup& backup) const;
    /// Writes the backup's content to a new file at `path`; the open file is untouched.
    tl::expected<void, ApplyError> restoreTo(const Backup& backup, const QString& path) const;
    /// The file's own check: structure, references, seals (the first twenty rows that are not as they were
    /// written). Empty if all is well.
    [[nodiscard]] std::vector<QString> check() const;
    /// Where an earlier version took signs that no text may hold, and something harmless is read in their
    /// place; the first twenty. No fault: the file keeps what was written.
    [[nodiscard]] std::vector<QString> replacedTexts() const;

  private:
    struct Parts;
    explicit File(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> parts_;
};

struct File::Opened {
    OpenReport report;
    std::unique_ptr<File> file;  ///< null unless Opened, Migrated or NewerReadOnly
};

/// What a file says, without opening it as it is.
struct Facts {
    OpenReport report;                 ///< Opened if the rows are there
    std::vector<picture::Row> rows{};  ///< for verbs::adoptAll, which checks them
    /// Rows that are not as they were written, each with its place; the first twenty. Also of a file whose
    /// rows can't be read.
    std::vector<QString> altered{};
};
/// Reads the facts of a file that was refused as Foreign, Lacking or Altered, as they stand. What else it
/// brings along is not looked at and not run; the file stays as it is.
Facts factsOf(const QString& path);

/// A path that can have any bytes, as a QString that keeps them: what is no UTF-8 stands there as halves of
/// pairs by themselves, which no text has.
QString pathOf(std::string_view bytes);
/// True if there are such bytes in it.
bool isOdd(const QString& path);
/// The path as the system has it, byte for byte.
std::filesystem::path onDisk(const QString& path);
/// There, with nothing in it, and no link: what is left of a file whose making was broken off.
bool isEmptyFile(const QString& path);
/// Who may read and write a file.
QFileDevice::Permissions rightsOf(const QString& path);

/// The file of ours whose journal or backup folder this name belongs to, or nothing: nobody else may write
/// there.
std::optional<QString> garageThatOwns(const QString& path);

/// Random ids from the operating system, 1 to 2^63 - 1.
base::IdSource randomIds();

}  // namespace wm::store
