// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/workbench/workbench.h"

#include <QFileInfo>
#include <QFileSystemWatcher>
#include <QTimer>
#include <algorithm>
#include <utility>

#include "ui/words/apply_words.h"
#include "ui/words/speech.h"
#include "ui/workbench/file_names.h"

namespace wm::ui {

namespace {

constexpr int kSettleMs = 300;
constexpr int kMinuteMs = 60'000;

calendar::Date dateOf(const QDate& date) {
    return calendar::Date{static_cast<std::int32_t>(date.toJulianDay() - QDate(1970, 1, 1).toJulianDay())};
}

}  // namespace

Workbench::Workbench(Clock clock, QObject* parent)
    : QObject(parent),
      clock_(std::move(clock)),
      watcher_(new QFileSystemWatcher(this)),
      settle_(new QTimer(this)),
      minute_(new QTimer(this)) {
    // Another program writes in several steps; look once it has come to rest.
    settle_->setSingleShot(true);
    settle_->setInterval(kSettleMs);
    connect(watcher_, &QFileSystemWatcher::fileChanged, settle_, qOverload<>(&QTimer::start));
    connect(settle_, &QTimer::timeout, this, &Workbench::refresh);
    minute_->setInterval(kMinuteMs);
    connect(minute_, &QTimer::timeout, this, &Workbench::refresh);
    minute_->start();
}

Workbench::~Workbench() = default;

store::OpenReport Workbench::take(store::File::Opened opened) {
    if (!opened.file)
        return std::move(opened.report);
    file_ = std::move(opened.file);
    path_ = file_->path();
    saidTakenBack_ = 0;
    chosen_.reset();
    watch();
    rebuild();
    emit fileChanged();
    emit chosenChanged();
    emit changed();
    return std::move(opened.report);
}

store::OpenReport Workbench::open(const QString& path, store::OpenFor purpose) {
    return take(store::File::open(whereItLies(path), purpose));
}

store::OpenReport Workbench::create(const QString& path) {
    takeBackUnfinished(path);
    return take(store::File::create(path));
}

void Workbench::close() {
    if (!file_)
        return;
    book_.reset();
    file_.reset();
    path_.clear();
    chosen_.reset();
    watch();
    emit fileChanged();
    emit chosenChanged();
    emit changed();
}

bool Workbench::readOnly() const {
    return !file_ || file_->readOnly();
}

calendar::Date Workbench::today() const {
    if (file_)
        if (const auto pinned = file_->ledger()->garage().pinnedToday)
            return *pinned;
    return dateOf(clock_().date());
}

bool Workbench::dayIsPinned() const {
    return file_ && file_->ledger()->garage().pinnedToday.has_value();
}

tl::expected<picture::Change, store::ApplyError> Workbench::attempt(const store::Verb& verb,
                                                                    const base::Progress& progress) {
    if (!file_)
        return tl::unexpected<store::ApplyError>{{store::ApplyError::Kind::ReadOnly, {}, {}}};
    writing_ = true;
    auto written = file_->apply(verb, today(), progress);
    writing_ = false;
    sayWhatWasTakenBack();
    if (written) {
        rebuild();
        emit changed();
        emit saved(wordsOfKept(written->text), clock_());
        if (const auto trouble = file_->backupTrouble())
            emit refused(wordsFor(*trouble));
    } else if (&book_->ledger() != file_->ledger().get()) {
        // The file had moved on and was read afresh: the window must not go on showing the old picture.
        rebuild();
        emit changed();
    }
    if (!written)
        return tl::unexpected(placed(written.error()));
    return written;
}

// Where nobody forbids writing and the store finds that it can't, another file has the place of the one that
// it holds, or none has.
store::ApplyError Workbench::placed(store::ApplyError error) const {
    const QFileInfo file(path_);
    const bool mayBeWritten = file.isWritable() && QFileInfo(file.absolutePath()).isWritable();
    if (error.kind == store::ApplyError::Kind::ReadOnly && !readOnly() && (mayBeWritten || !file.exists()))
        error.detail = kMovedAway;
    return error;
}

bool Workbench::perform(const store::Verb& verb) {
    const auto written = attempt(verb);
    if (!written)
        report(written.error());
    return written.has_value();
}

QString Workbench::undoText() const {
    return file_ ? wordsOfKept(file_->undoText().value_or("")) : QString();
}

QString Workbench::redoText() const {
    return file_ ? wordsOfKept(file_->redoText().value_or("")) : QString();
}

bool Workbench::undo(store::LastMachine last, store::Redo redo) {
    if (!file_)
        return true;
    if (!file_->undoText()) {
        // Another window, or a verb without one, may have ended it since the button was painted.
        emit changed();
        emit refused(
            tr("Nothing is left to take back: undo ends with an export or a print, and after 12 hours."));
        return true;
    }
    const auto undone = file_->undo(last, redo);
    sayWhatWasTakenBack();
    if (!undone && undone.error().error.fault == base::Fault::MustAnswer)
        return false;
    if (!undone) {
        report(placed(undone.error()));
        return true;
    }
    rebuild();
    emit changed();
    emit saved(tr("taken back: %1").arg(wordsOfKept(*undone)), clock_());
    return true;
}

void Workbench::redo() {
    if (!file_ || !file_->redoText())
        return;
    const auto redone = file_->redo();
    sayWhatWasTakenBack();
    if (!redone)
        return report(placed(redone.error()));
    rebuild();
    emit changed();
    emit saved(tr("done again: %1").arg(wordsOfKept(*redone)), clock_());
}

void Workbench::endUndo(const QString& because) {
    if (!file_)
        return;
    if (const auto ended = file_->endUndo(); !ended)
        report(placed(ended.error()));
    emit changed();
    if (!because.isEmpty())
        emit saved(because, clock_());
}

std::vector<std::int64_t> Workbench::search(const QString& words, int most) const {
    return file_ ? file_->search(words, most) : std::vector<std::int64_t>();
}

void Workbench::choose(std::optional<MachineId> machine) {
    if (chosen_ == machine)
        return;
    chosen_ = machine;
    emit chosenChanged();
}

void Workbench::refresh() {
    if (!file_ || writing_)
        return;
    watch();
    const bool newDay = book_ && book_->today() != today();
    const bool isRead = file_->refresh();
    sayWhatWasTakenBack();
    if (!isRead && !newDay)
        return;
    rebuild();
    emit changed();
}

void Workbench::rebuild() {
    book_ = book_ ? std::make_shared<book::Book>(file_->ledger(), today(), *book_)
                  : std::make_shared<book::Book>(file_->ledger(), today());
    const auto machines = book_->machines();
    const auto is = [this](const items::Machine* machine) { return machine->id == *chosen_; };
    if (chosen_ && std::none_of(machines.begin(), machines.end(), is)) {
        chosen_.reset();
        emit chosenChanged();
    }
}

void Workbench::watch() {
    if (!watcher_->files().isEmpty() && !watcher_->files().contains(path_))
        watcher_->removePaths(watcher_->files());
    if (!path_.isEmpty() && QFileInfo::exists(path_))
        watcher_->addPath(path_);
}

void Workbench::report(const store::ApplyError& error) {
    emit refused(wordsFor(error));
}

// Another program was killed in a write while the file was open here.
void Workbench::sayWhatWasTakenBack() {
    if (std::exchange(saidTakenBack_, file_->takenBack()) != file_->takenBack())
        emit refused(takenBackWords(path_));
}

}  // namespace wm::ui
