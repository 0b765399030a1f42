// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/notebook_dialog.h"

#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "ui/entry/starters.h"
#include "ui/shell/long_work.h"
#include "ui/shell/notebook_form.h"
#include "ui/shell/notebook_totals.h"
#include "ui/shell/notebook_verdicts.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/words/notebook_words.h"
#include "ui/words/speech.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

QLabel* plain(const QString& words, const char* role, QWidget* parent) {
    auto* label = new QLabel(words, parent);
    label->setTextFormat(Qt::PlainText);
    if (role != nullptr)
        label->setProperty("role", QString::fromLatin1(role));
    return label;
}

// Enter always means the import: no other button may catch it.
QPushButton* button(const QString& words, const char* name, QWidget* parent) {
    auto* made = new QPushButton(words, parent);
    made->setObjectName(QString::fromLatin1(name));
    made->setAutoDefault(false);
    return made;
}

// A machine without tasks has nothing that falls due, and its jobs renew nothing.
QString withoutScheduleWords(const std::vector<std::string>& machines) {
    QStringList names;
    for (const std::string& name : machines)
        names << text(name);
    if (names.isEmpty())
        return {};
    return NotebookDialog::tr("%1 is/are new: choose the schedule(s) above, so that the jobs count.", nullptr,
                              static_cast<int>(names.size()))
        .arg(names.join(NotebookDialog::tr(", ")));
}

QStringList namesOf(const std::vector<exchange::Starter>& starters) {
    QStringList names;
    for (const exchange::Starter& each : starters)
        names << text(each.name);
    return names;
}

}  // namespace

NotebookDialog::NotebookDialog(Workbench& workbench, std::unique_ptr<NotebookPreview> preview, QString name,
                               QWidget* parent)
    : QDialog(parent),
      workbench_(workbench),
      preview_(std::move(preview)),
      name_(std::move(name)),
      form_(new QScrollArea(this)),
      starters_(starters()),
      ways_(new NotebookForm(*preview_, namesOf(starters_), this)),
      verdicts_(new NotebookVerdicts(*preview_, this)),
      words_(plain({}, nullptr, this)),
      totals_(new NotebookTotals(this)),
      import_(button({}, "notebook-import", this)) {
    setObjectName(QStringLiteral("notebook-dialog"));
    setWindowTitle(tr("Import a notebook: %1").arg(name_));
    const QSize room = parent != nullptr ? parent->window()->size() : QSize(1280, 800);
    resize(std::max(room.width() - 2 * kSpacePage, 800), std::max(room.height() - 2 * kSpacePage, 600));
    layOut();
    connectForm();
    connect(verdicts_, &NotebookVerdicts::agreed, this, &NotebookDialog::agreed);
    connect(verdicts_, &NotebookVerdicts::importAsked, this, &NotebookDialog::enter);
    connect(import_, &QPushButton::clicked, this, &NotebookDialog::importAgreed);
    refresh();
    verdicts_->setFocus(Qt::OtherFocusReason);
}

void NotebookDialog::layOut() {
    form_->setWidgetResizable(true);
    form_->setFrameShape(QFrame::NoFrame);
    form_->setWidget(ways_);
    form_->setFocusPolicy(Qt::NoFocus);
    form_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    form_->setObjectName(QStringLiteral("notebook-form"));
    words_->setObjectName(QStringLiteral("notebook-words"));
    words_->setWordWrap(true);
    auto* rule = new QFrame(this);
    rule->setFrameShape(QFrame::HLine);
    auto* bottom = new QHBoxLayout;
    bottom->setSpacing(kSpaceSection);
    bottom->addWidget(totals_, 1);
    auto* leave = button(tr("Leave (Esc)"), "notebook-leave", this);
    leave->setFlat(true);
    import_->setDefault(true);
    connect(leave, &QPushButton::clicked, this, &QDialog::reject);
    auto* buttons = new QVBoxLayout;
    buttons->setSpacing(kSpaceHair);
    buttons->addStretch();
    buttons->addWidget(import_);
    buttons->addWidget(leave);
    bottom->addLayout(buttons);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(kSpaceGroup, kSpaceGroup, kSpaceGroup, kSpaceLine);
    lines->setSpacing(kSpaceClose);
    lines->addWidget(form_);
    lines->addWidget(verdicts_, 1);
    lines->addWidget(rule);
    lines->addWidget(words_);
    lines->addLayout(bottom);
}

// As high as what stands in it, up to a point: the lines below want the room.
void NotebookDialog::fitForm() {
    const int wide = width() - 2 * kSpaceGroup - kSpaceClose;
    form_->setFixedHeight(std::min(ways_->heightForWidth(wide), height() * 2 / 5));
}

void NotebookDialog::resizeEvent(QResizeEvent* event) {
    QDialog::resizeEvent(event);
    fitForm();
}

void NotebookDialog::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        return enter();
    QDialog::keyPressEvent(event);
}

void NotebookDialog::connectForm() {
    connect(ways_, &NotebookForm::separatorSaid, this, [this](char separator) {
        LongWork work(tr("Reading %1").arg(quoted(name_)), this);
        const auto trouble = preview_->setSeparator(separator, work.steps());
        if (trouble) {
            ways_->refresh();
            return words_->setText(notebookRefusal(*trouble, name_));
        }
        judgeAgain();
    });
    connect(ways_, &NotebookForm::decimalSaid, this,
            [this](char decimal) { change([&] { preview_->setDecimal(decimal); }); });
    connect(ways_, &NotebookForm::datesSaid, this,
            [this](notebook::DateForm form) { change([&] { preview_->setDates(form); }); });
    connect(ways_, &NotebookForm::columnSaid, this, [this](std::size_t at, notebook::Column column) {
        change([&] { preview_->setColumn(at, column); });
    });
    connect(ways_, &NotebookForm::meaningSaid, this,
            [this](const QString& written, std::optional<MachineId> machine) {
                change([&] { preview_->setMeaning(written.toStdString(), machine); });
            });
    connect(
        ways_, &NotebookForm::newMachineSaid, this, [this](const QString& written, const QString& schedule) {
            const auto starter = std::find_if(starters_.begin(), starters_.end(),
                                              [&](const auto& each) { return text(each.name) == schedule; });
            change([&] {
                if (starter == starters_.end())
                    preview_->setMeaning(written.toStdString(), std::nullopt);
                else
                    preview_->setSchedule(written.toStdString(), *starter);
            });
        });
    connect(ways_, &NotebookForm::onlyMachineSaid, this,
            [this](MachineId machine) { change([&] { preview_->setOnlyMachine(machine); }); });
    connect(ways_, &NotebookForm::asFoundAsked, this, [this] { change([&] { preview_->forget(); }); });
    connect(&workbench_, &Workbench::changed, this, &NotebookDialog::bookChanged);
}

void NotebookDialog::change(const std::function<void()>& say) {
    say();
    judgeAgain();
}

void NotebookDialog::judgeAgain() {
    standing_.setBusy(true);
    preview_->setBook(workbench_.book());
    {
        LongWork work(tr("Judging the lines of %1").arg(quoted(name_)), this);
        preview_->judge(work.steps());
    }
    standing_.setBusy(false);
    refresh();
}

void NotebookDialog::bookChanged() {
    if (standing_.isBusy())
        return;
    if (!workbench_.hasFile() || workbench_.readOnly())
        return QDialog::reject();
    judgeAgain();
}

void NotebookDialog::refresh() {
    ways_->refresh();
    fitForm();
    verdicts_->refresh();
    agreed();
}

void NotebookDialog::agreed() {
    standing_.count(*preview_);
    totals_->show(standing_);
    showWords();
    showImport();
    verdicts_->restate(standing_);
}

// The button says what it leaves out, for the hand that clicks it.
void NotebookDialog::showImport() {
    QString words = tr("Take %n line(s)", nullptr, static_cast<int>(standing_.goesIn().lines));
    if (standing_.open() > 0)
        words += tr("; %n doubtful stay(s) out", nullptr, static_cast<int>(standing_.open()));
    import_->setText(words +
                     (standing_.open() > 0 && !standing_.hasAsked() ? tr(" (Enter twice)") : tr(" (Enter)")));
    import_->setEnabled(standing_.goesIn().lines > 0);
}

void NotebookDialog::showWords() {
    QPalette ink = palette();
    const Tokens tokens = tokensFor(ink);
    const auto* notebook = preview_->notebook();
    ink.setColor(QPalette::WindowText, notebook == nullptr ? tokens.over : tokens.ink);
    words_->setPalette(ink);
    if (notebook == nullptr)
        return words_->setText(preview_->refusal() ? notebookRefusal(*preview_->refusal(), name_)
                                                   : QString());
    QStringList words;
    if (!standing_.hasNew())
        words << notebookRefusal({base::Fault::NothingNew, "notebook", {}, {}}, name_);
    else if (standing_.open() > 0)
        words << tr("%n doubtful line(s) wait for your word; left open, it/they stay(s) out.", nullptr,
                    static_cast<int>(standing_.open()));
    else
        words << tr("Nothing is written before you agree; undo takes all of it back at once.");
    if (const QString bare = withoutScheduleWords(preview_->withoutSchedule()); !bare.isEmpty())
        words << bare;
    if (standing_.hasJobs())
        words << tr(
            "Jobs from a notebook are records of work long done: they leave no joint hand-tight and "
            "draw on no opened container.");
    words_->setText(words.join(QLatin1Char(' ')));
}

void NotebookDialog::enter() {
    switch (standing_.enter()) {
        case NotebookStanding::Enter::Nothing:
            return;
        case NotebookStanding::Enter::AskAboutOpen:
            return askAboutOpen();
        case NotebookStanding::Enter::Import:
            return importAgreed();
    }
}

void NotebookDialog::askAboutOpen() {
    verdicts_->goToOpen();
    const QString ways = tr("Space accepts the likely cure, A all cures, L leaves the line out.");
    const QString without = standing_.goesIn().lines == 0 ? tr("Nothing goes in before that.")
                                                          : tr("Enter once more goes on without it/them.",
                                                               nullptr, static_cast<int>(standing_.open()));
    ask(tr("%n doubtful line(s) have no answer yet.", nullptr, static_cast<int>(standing_.open())) +
        QLatin1Char(' ') + ways + QLatin1Char(' ') + without);
    showImport();
}

void NotebookDialog::ask(const QString& words) {
    QPalette ink = palette();
    ink.setColor(QPalette::WindowText, tokensFor(ink).due);
    words_->setPalette(ink);
    words_->setText(words);
}

// Answers are work: a wrong key does not throw them away.
void NotebookDialog::reject() {
    const auto answers = standing_.answers();
    if (standing_.mayLeave())
        return QDialog::reject();
    ask(tr("%n answer(s) not written; Escape once more leaves without it/them.", nullptr,
           static_cast<int>(answers)));
}

void NotebookDialog::importAgreed() {
    if (standing_.isBusy() || !import_->isEnabled() || preview_->notebook() == nullptr)
        return;
    standing_.setBusy(true);
    LongWork work(tr("Taking over %1").arg(quoted(name_)), this);
    auto taken = preview_->take(name_.toStdString(), work.steps());
    if (!taken) {
        standing_.setBusy(false);
        return words_->setText(notebookRefusal(taken.error(), name_));
    }
    work.next(tr("Writing %n line(s) as one step", nullptr, static_cast<int>(taken->lines)));
    const auto steps = [&work](std::size_t done, std::size_t of) {
        const bool goesOn = work.goesOn(done, of);
        if (goesOn && done == of)
            work.last(NotebookDialog::tr("All lines are written; making them safe"));
        return goesOn;
    };
    // The change was made from the picture that was looked at; on another one it may not stand.
    const auto* judged = &preview_->file().ledger();
    const auto written = workbench_.attempt(
        [&taken, judged](const verbs::VerbContext& context) -> base::Result<picture::Change> {
            if (&context.book.ledger() != judged)
                return base::refuse(base::Fault::Outdated, "notebook");
            return std::move(taken->change);
        },
        steps);
    standing_.setBusy(false);
    if (!written) {
        const base::Fault fault = written.error().error.fault;
        const bool moved = fault == base::Fault::Outdated;
        if (moved)
            judgeAgain();
        return words_->setText(moved ? tr("The file has changed meanwhile: look at the lines once more.")
                               : fault == base::Fault::Stopped ? notebookRefusal(written.error().error, name_)
                                                               : wordsFor(written.error()));
    }
    QString words = wordsOfKept(written->text) + QStringLiteral(": ") + totalsWords(standing_.goesIn());
    if (taken->waiting > 0)
        words += tr("; %n meter reading(s) wait for a word about a renewed meter", nullptr,
                    static_cast<int>(taken->waiting));
    emit imported(words);
    accept();
}

}  // namespace wm::ui
