// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDateTime>
#include <QObject>
#include <QString>
#include <functional>
#include <memory>
#include <optional>

#include "core/store/store.h"

class QFileSystemWatcher;
class QTimer;

namespace wm::ui {

/// What day and time it is; brought by whoever builds the window, so that tests can say.
using Clock = std::function<QDateTime()>;

/// The open file as the whole window sees it. Pages read `book()`, say verbs through `perform`, and redraw on
/// `changed()`. Nothing else in the interface touches the store.
class Workbench : public QObject {
    Q_OBJECT

  public:
    explicit Workbench(Clock clock, QObject* parent = nullptr);
    ~Workbench() override;

    /// Opens `path`; the file open until now stays if that fails.
    store::OpenReport open(const QString& path, store::OpenFor purpose = store::OpenFor::Writing);
    store::OpenReport create(const QString& path);
    void close();

    [[nodiscard]] bool hasFile() const { return file_ != nullptr; }
    [[nodiscard]] const QString& path() const { return path_; }
    [[nodiscard]] bool readOnly() const;
    /// The picture of now, or nullptr without a file. It and every pointer out of it hold until `changed()`;
    /// keep a copy of this pointer to keep them longer.
    [[nodiscard]] std::shared_ptr<const book::Book> book() const { return book_; }
    /// The day on which the book stands: the clock's, or the day that the file is pinned to.
    [[nodiscard]] calendar::Date today() const;
    [[nodiscard]] bool dayIsPinned() const;

    /// Says a verb. On success the book is rebuilt and changed() and saved() follow; what went wrong is
    /// answered for the caller to show at the field. Meanwhile `progress` may let the window live, as long as
    /// nothing else is said.
    tl::expected<picture::Change, store::ApplyError> attempt(const store::Verb& verb,
                                                             const base::Progress& progress = {});
    /// The same where there is no field to show it at: what went wrong goes out by refused().
    bool perform(const store::Verb& verb);

    /// The words of what undo would take back; empty if nothing.
    [[nodiscard]] QString undoText() const;
    [[nodiscard]] QString redoText() const;
    /// False if it would take the only machine with it and nobody said that it may: nothing was done.
    bool undo(store::LastMachine last = store::LastMachine::Stays, store::Redo redo = store::Redo::May);
    void redo();
    /// Undo ends here: a sheet went out on paper, an export left the program, a whole file came in. Says why.
    void endUndo(const QString& because = {});

    /// Ids of facts whose words match, best first.
    [[nodiscard]] std::vector<std::int64_t> search(const QString& words, int most) const;
    /// For backups, checks and export; nullptr without a file. Facts are written through verbs alone.
    [[nodiscard]] const store::File* file() const { return file_.get(); }

    /// The machine that the window is about; nothing = all of them.
    [[nodiscard]] std::optional<MachineId> chosen() const { return chosen_; }
    void choose(std::optional<MachineId> machine);

    /// Looks for what another program wrote, and whether the day has moved on.
    void refresh();

  signals:
    /// The book is a new one: a verb, undo, redo, another program, another file, a new day.
    void changed();
    void fileChanged();
    void chosenChanged();
    void saved(const QString& what, const QDateTime& when);
    void refused(const QString& words);

  private:
    store::OpenReport take(store::File::Opened opened);
    void rebuild();
    void watch();
    [[nodiscard]] store::ApplyError placed(store::ApplyError error) const;
    void report(const store::ApplyError& error);
    void sayWhatWasTakenBack();

    Clock clock_;
    std::unique_ptr<store::File> file_;
    std::shared_ptr<const book::Book> book_;
    QString path_;
    std::optional<MachineId> chosen_;
    bool writing_ = false;
    int saidTakenBack_ = 0;  ///< of the interrupted writes that the file has taken back
    QFileSystemWatcher* watcher_;
    QTimer* settle_;
    QTimer* minute_;
};

}  // namespace wm::ui
