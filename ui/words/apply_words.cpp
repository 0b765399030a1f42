// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/apply_words.h"

#include <QFileInfo>

#include "ui/words/error_words.h"
#include "ui/words/tr.h"

namespace wm::ui {

QString readOnlyWords() {
    return tr(
        "This file is open for reading only: it may not be written where it lies, or a newer Witnessmark "
        "wrote it. Copy it to where you may write, or open it with that newer program.");
}

QString wordsFor(const store::ApplyError& error) {
    using Kind = store::ApplyError::Kind;
    switch (error.kind) {
        case Kind::Refused:
            return wordsFor(error.error);
        case Kind::Stale:
            return tr(
                "Another window or program changed this file in the meantime. Nothing was written; look "
                "again, "
                "then say it again.");
        case Kind::ReadOnly:
            if (error.detail == kMovedAway)
                return tr(
                    "The file that was open here was replaced or moved, so nothing was written. Open it "
                    "again, and say it again.");
            return tr("Nothing was written. %1").arg(readOnlyWords());
        case Kind::Locked:
            return tr("Another program holds the file just now. Nothing was written; try again in a moment.");
        case Kind::NoSpace:
            return tr(
                "There is no space left where the file lies. Nothing was written; make room and try again.");
        case Kind::Corrupt:
            return tr("This file is damaged, so nothing was written. Go back to one of its backups.");
        case Kind::Endless:
            return tr(
                "This came to no end and was broken off. Nothing was written; check the file, and go back to "
                "one of its backups if it has faults.");
        case Kind::Clock:
            return tr("The clock of this computer shows %1, a day that no entry can have. Nothing was "
                      "written; set "
                      "the clock, then say it again.")
                .arg(error.detail);
        case Kind::UndoDamaged:
            return tr(
                "What was kept for taking this back is damaged, so nothing was written. The file itself is "
                "sound: put right or strike what should not stand there.");
        case Kind::Failed:
            break;
    }
    return tr(
        "The file could not be written. Nothing was changed; see whether a file may grow this large where "
        "it lies, copy it to a safe place and check the disk.");
}

QString wordsFor(const store::BackupTrouble& trouble) {
    using Kind = store::BackupTrouble::Kind;
    const QString folder = quoted(QFileInfo(trouble.folder).fileName());
    switch (trouble.kind) {
        case Kind::Linked:
            return tr("Saved, but without a backup: %1 beside the file is a link, and backups don't go where "
                      "a "
                      "link leads. Take the link away; the next change makes a folder.")
                .arg(folder);
        case Kind::NoFolder:
            return tr("Saved, but without a backup: the folder %1 beside the file can't be made or written. "
                      "See "
                      "that no file has its name and that you may write there.")
                .arg(folder);
        case Kind::NoSpace:
            return tr("Saved, but without a backup: there is no space left for one in %1. Make room.")
                .arg(folder);
        case Kind::NotSound:
            return tr("Saved, but without a backup: the copy in %1 did not pass its check. Check this file, "
                      "and "
                      "the disk it lies on.")
                .arg(folder);
        case Kind::Failed:
            break;
    }
    return tr("Saved, but without a backup: no copy could be made in %1 (%2). The next change tries again.")
        .arg(folder, trouble.detail);
}

namespace {

QString wordsForWhatStandsBeside(const store::OpenReport& report, const QString& name) {
    const QString beside = quoted(report.beside);
    if (report.detail == QLatin1String("beside folder"))
        return tr("%1 can't be used: beside it the folder %2 has the name that the journal of its writes "
                  "needs. Give that folder another name, then try again.")
            .arg(name, beside);
    if (report.detail == QLatin1String("beside link"))
        return tr("%1 can't be used: beside it the link %2 has the name that the journal of its writes "
                  "needs, "
                  "and no journal goes where a link leads. Take the link away, then try again.")
            .arg(name, beside);
    return tr("%1 can't be used: beside it the pipe or device %2 has the name that the journal of its writes "
              "needs. Take it away, then try again.")
        .arg(name, beside);
}

QString wordsForNoAccess(const store::OpenReport& report, const QString& name) {
    if (!report.beside.isEmpty())
        return wordsForWhatStandsBeside(report, name);
    if (report.detail == QLatin1String("older"))
        return tr("%1 was written by an earlier Witnessmark and has to be brought to this version first, "
                  "but it may not be written here. Copy it to where it may be, and open the copy.")
            .arg(name);
    if (report.detail == QLatin1String("device"))
        return tr("%1 is a pipe or a device, not a file. Name a file.").arg(name);
    if (report.detail == QLatin1String("name"))
        return tr("%1 can't be opened: its name holds bytes that are no UTF-8 text. Give the file another "
                  "name, "
                  "then open it again.")
            .arg(name);
    if (report.detail == QLatin1String("reserved"))
        return tr("%1 can't be made: that name belongs to the journal or the backups of the garage beside "
                  "it. "
                  "Choose another name.")
            .arg(name);
    return tr("%1 can't be opened here. Check that it is there, that it is a file, and that you may read it.")
        .arg(name);
}

// Something else than this program was at it; its facts can be had all the same.
QString wordsForChanged(const store::OpenReport& report, const QString& name) {
    using Outcome = store::OpenOutcome;
    if (report.outcome == Outcome::Foreign)
        return tr("%1 holds something that Witnessmark did not put there (%2). It was not opened, and "
                  "nothing "
                  "in it was run. Its facts can be taken over into a new file.")
            .arg(name, report.detail);
    if (report.outcome == Outcome::Lacking)
        return tr("%1 lacks something that Witnessmark puts into each of its files (%2). It was not "
                  "opened. Its facts can be taken over into a new file.")
            .arg(name, report.detail);
    return tr("%1 was changed by something else than Witnessmark, or is damaged: %2. It was not "
              "touched; "
              "go back to one of its backups, or take its facts over into a new file, as they stand.")
        .arg(name, report.detail);
}

QString wordsForOutcome(const store::OpenReport& report) {
    using Outcome = store::OpenOutcome;
    const QString name = quoted(QFileInfo(report.path).fileName());
    switch (report.outcome) {
        case Outcome::Opened:
            return {};
        case Outcome::Migrated:
            return tr("%1 was brought to this version. The old file stands beside it as %2.")
                .arg(name, QFileInfo(report.backup).fileName());
        case Outcome::NewerReadOnly:
            return tr("%1 was written by a newer Witnessmark. It is open for reading only; write in it with "
                      "that "
                      "newer program.")
                .arg(name);
        case Outcome::NewerRefused:
            if (report.detail.isEmpty())
                return tr("%1 needs a newer Witnessmark. It was not touched.").arg(name);
            return tr("%1 needs a newer Witnessmark (%2). It was not touched.").arg(name, report.detail);
        case Outcome::NotOurs:
            if (QFileInfo(report.path).isFile() && QFileInfo(report.path).size() == 0)
                return tr("%1 is empty: a new file was begun under that name and not finished. Make it anew; "
                          "the "
                          "name is free.")
                    .arg(name);
            return tr("%1 is not a Witnessmark file. It was not touched.").arg(name);
        case Outcome::Corrupt:
            // A place within it helps whoever mends it; what the database says of pages does not.
            if (report.detail.startsWith(QLatin1String("table ")))
                return tr("%1 is damaged: %2. It was not touched; go back to one of its backups.")
                    .arg(name, report.detail);
            return tr("%1 is damaged. It was not touched; go back to one of its backups.").arg(name);
        case Outcome::Locked:
            return tr("Another program holds %1. Close it there, then open it again.").arg(name);
        case Outcome::NoAccess:
            return wordsForNoAccess(report, name);
        case Outcome::HalfWritten:
            return tr("The last write to %1 was interrupted, and what it began has to be taken back before "
                      "the "
                      "file can be read; but it may not be written where it lies. Copy it, together with "
                      "%2-journal beside it, to where it may be written, and open the copy.")
                .arg(name, QFileInfo(report.path).fileName());
        case Outcome::Foreign:
        case Outcome::Lacking:
        case Outcome::Altered:
            return wordsForChanged(report, name);
        case Outcome::Endless:
            return tr("Reading %1 came to no end and was broken off. It was not touched; go back to one of "
                      "its "
                      "backups.")
                .arg(name);
        case Outcome::NoSpace:
            break;
    }
    return tr("There is no space left for %1. Make room, then try again.").arg(name);
}

}  // namespace

QString takenBackWords(const QString& path) {
    return tr("The last write to %1 was interrupted before it was done, so it was taken back: the "
              "file is as it was before. Look whether what you entered last is there, and enter "
              "it again if it is not.")
        .arg(quoted(QFileInfo(path).fileName()));
}

QString wordsFor(const store::OpenReport& report) {
    const QString outcome = wordsForOutcome(report);
    if (!report.tookBack)
        return outcome;
    const QString words = takenBackWords(report.path);
    return outcome.isEmpty() ? words : words + QLatin1Char(' ') + outcome;
}

}  // namespace wm::ui
