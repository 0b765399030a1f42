// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/file_desk.h"

#include <QApplication>
#include <QFileInfo>
#include <QSettings>
#include <utility>

#include "core/exchange/json.h"
#include "ui/shell/backups_dialog.h"
#include "ui/shell/long_work.h"
#include "ui/shell/notebook_dialog.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/words/notebook_words.h"
#include "ui/words/oddity_words.h"
#include "ui/words/tr.h"
#include "ui/workbench/file_names.h"
#include "ui/workbench/prompts.h"
#include "ui/workbench/read_bytes.h"
#include "ui/workbench/workbench.h"
#include "ui/workbench/write_bytes.h"

namespace wm::ui {

namespace {

constexpr int kMostRecent = 6;
const QString kRecent = QStringLiteral("recent");

QString fileFilter() {
    return tr("Witnessmark (*.witnessmark)");
}
QString textFilter() {
    return tr("JSON text (*.json)");
}

// All rows of a file are read, or written, in one go.
class WaitCursor {
  public:
    WaitCursor() { QApplication::setOverrideCursor(Qt::WaitCursor); }
    ~WaitCursor() { QApplication::restoreOverrideCursor(); }
    WaitCursor(const WaitCursor&) = delete;
    WaitCursor& operator=(const WaitCursor&) = delete;
};

}  // namespace

FileDesk::FileDesk(Workbench& workbench, Prompts& prompts, QSettings& settings, DemoSource demo,
                   QWidget* window)
    : QObject(window),
      workbench_(workbench),
      prompts_(prompts),
      settings_(settings),
      demo_(std::move(demo)),
      window_(window) {}

QStringList FileDesk::recent() const {
    return settings_.value(kRecent).toStringList();
}

void FileDesk::remember(const QString& path) {
    QStringList paths = recent();
    paths.removeAll(path);
    paths.prepend(path);
    while (paths.size() > kMostRecent)
        paths.removeLast();
    settings_.setValue(kRecent, paths);
    emit recentChanged();
}

void FileDesk::makeNew() {
    const auto path = prompts_.chooseFile(Prompts::FileUse::Save, tr("New file"), fileFilter());
    if (!path)
        return;
    const auto report = workbench_.create(withEnding(*path, QStringLiteral(".witnessmark")));
    if (report.outcome != store::OpenOutcome::Opened)
        return prompts_.report(wordsFor(report), report.detail);
    remember(workbench_.path());
}

void FileDesk::chooseAndOpen() {
    if (const auto path = prompts_.chooseFile(Prompts::FileUse::Open, tr("Open"), fileFilter()))
        openPath(*path);
}

void FileDesk::openPath(const QString& path) {
    const auto report = workbench_.open(path);
    using Outcome = store::OpenOutcome;
    if (report.outcome == Outcome::Foreign || report.outcome == Outcome::Lacking ||
        report.outcome == Outcome::Altered)
        return offerItsFacts(report);
    if (const QString words = wordsFor(report); !words.isEmpty())
        prompts_.report(words, report.detail);
    if (workbench_.hasFile() && workbench_.path() == report.path)
        remember(workbench_.path());
}

void FileDesk::openDemo() {
    const auto path = demo_ ? demo_() : std::nullopt;
    if (!path)
        return prompts_.report(tr("The demo could not be built here."), {});
    openPath(*path);
}

void FileDesk::importText() {
    const auto from = prompts_.chooseFile(Prompts::FileUse::Open, tr("Import JSON"), textFilter());
    if (!from)
        return;
    const auto bytes = readBytes(*from);
    if (!bytes)
        return prompts_.report(wordsFor(bytes.error(), QFileInfo(*from).fileName()), {});
    const auto rows = exchange::fromJson(bytes->toStdString());
    if (!rows)
        return prompts_.report(tr("%1 was not imported.").arg(QFileInfo(*from).fileName()),
                               wordsFor(rows.error()));
    adopt(*rows, tr("Import into a new file"));
}

bool FileDesk::adopt(const std::vector<picture::Row>& rows, const QString& title) {
    // Asked before a file is made for them.
    const book::Book nothing(std::make_shared<const picture::Ledger>(), workbench_.today());
    if (const auto asked = verbs::adoptAll({nothing, store::randomIds()}, rows); !asked) {
        prompts_.report(tr("Nothing was taken over, and no file was made."), wordsFor(asked.error()));
        return false;
    }
    const auto to = prompts_.chooseFile(Prompts::FileUse::Save, title, fileFilter());
    if (!to)
        return false;
    const QString before = workbench_.path();
    const auto report = workbench_.create(withEnding(*to, QStringLiteral(".witnessmark")));
    if (report.outcome != store::OpenOutcome::Opened) {
        prompts_.report(wordsFor(report), report.detail);
        return false;
    }
    const bool isIn = [&] {
        const WaitCursor wait;
        return workbench_.perform(
            [rows](const verbs::VerbContext& context) { return verbs::adoptAll(context, rows); });
    }();
    if (!isIn) {
        leaveEmptyFile(before);
        return false;
    }
    remember(workbench_.path());
    // A garage that came in whole is not emptied by an undo.
    workbench_.endUndo();
    if (const QStringList odd = oddityLines(*workbench_.book()); !odd.empty())
        prompts_.report(tr("Some of what was taken over no verb would have taken without a question: look at "
                           "each."),
                        odd.join(QLatin1Char('\n')));
    return true;
}

// The disk refused the rows of a file that was made for them: it goes, and the one of before is open again.
void FileDesk::leaveEmptyFile(const QString& before) {
    const QString made = workbench_.path();
    workbench_.close();
    store::File::discard(made);
    if (!before.isEmpty())
        (void)workbench_.open(before);
}

void FileDesk::offerItsFacts(const store::OpenReport& report) {
    if (!prompts_.confirm(wordsFor(report), tr("Take over its facts…")))
        return;
    const store::Facts facts = [&] {
        const WaitCursor wait;
        return store::factsOf(report.path);
    }();
    if (facts.report.outcome != store::OpenOutcome::Opened)
        return prompts_.report(wordsFor(facts.report), facts.report.detail);
    if (adopt(facts.rows, tr("Take over into a new file")) && !facts.altered.empty())
        prompts_.report(tr("Some rows were not as they had been written. They were taken over as they stand: "
                           "look at each."),
                        QStringList(facts.altered.begin(), facts.altered.end()).join(QLatin1Char('\n')));
}

void FileDesk::exportText() {
    const auto book = workbench_.book();
    const auto path = prompts_.chooseFile(Prompts::FileUse::Save, tr("Export as JSON"), textFilter());
    if (!path || !book)
        return;
    const WriteResult written =
        writeBytes(withEnding(*path, QStringLiteral(".json")),
                   QByteArray::fromStdString(exchange::toJson(book->ledger())), workbench_.path());
    if (!written.isWritten())
        return prompts_.report(tr("The text was not written."), written.detail);
    workbench_.endUndo(tr("exported; what was said before it is no longer taken back"));
}

void FileDesk::importNotebook() {
    if (!workbench_.hasFile() || workbench_.readOnly())
        return;
    const auto path = prompts_.chooseFile(Prompts::FileUse::Open, tr("Import a notebook"),
                                          tr("Notebook (*.csv *.tsv *.txt);;Any file (*)"));
    if (!path)
        return;
    const QString name = QFileInfo(*path).fileName();
    const auto bytes = readBytes(*path);
    if (!bytes)
        return prompts_.report(wordsFor(bytes.error(), name), {});
    auto preview = std::make_unique<NotebookPreview>(bytes->toStdString(), workbench_.book(), settings_);
    std::optional<base::Error> trouble;
    {
        LongWork work(tr("Reading %1").arg(quoted(name)), window_);
        trouble = preview->open(work.steps());
        if (!trouble)
            preview->judge(work.steps());
    }
    if (preview->refusal() && preview->refusal()->fault == base::Fault::Stopped)
        return emit said(notebookRefusal(*preview->refusal(), name));
    // Without columns another separator may help; everything else is no notebook.
    if (trouble && trouble->fault != base::Fault::NoColumns)
        return prompts_.report(notebookRefusal(*trouble, name), {});
    auto* dialog = new NotebookDialog(workbench_, std::move(preview), name, window_);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &NotebookDialog::imported, this, &FileDesk::said);
    dialog->open();
}

void FileDesk::showBackups() {
    if (workbench_.file() == nullptr)
        return;
    BackupsDialog dialog(*workbench_.file(), prompts_, window_);
    dialog.exec();
}

}  // namespace wm::ui
