// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/tasks_page.h"

#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPointer>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QSplitter>
#include <QTimer>
#include <QVBoxLayout>

#include "core/upkeep/unknown.h"
#include "core/verbs/what_if.h"
#include "ui/fields/fields_editor.h"
#include "ui/fields/outcome.h"
#include "ui/pages/columns.h"
#include "ui/pages/machine_shown.h"
#include "ui/pages/tasks/schedule_offer.h"
#include "ui/pages/tasks/task_fields.h"
#include "ui/pages/tasks/task_head.h"
#include "ui/pages/tasks/task_rows.h"
#include "ui/tables/row_table.h"
#include "ui/theme/type.h"
#include "ui/words/due_change_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/words/standing_words.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

// The table, the chosen task and the keys. What the keys do is in task_actions.cpp.

namespace wm::ui {

namespace {

constexpr int kPauseMs = 150;
constexpr int kWideEnough = 1500;  // for the fields beside the table
constexpr std::size_t kMovesShown = 5;

}  // namespace

TasksPage::TasksPage(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      find_(new QLineEdit(this)),
      progress_(new QLabel(this)),
      new_(new QPushButton(tr("New task (Ins)"), this)),
      offer_(new ScheduleOffer(this)),
      table_(new RowTable(taskHeaders(), TaskName, this)),
      side_(new QWidget(this)),
      head_(new TaskHead(side_)),
      scroll_(new QScrollArea(side_)),
      editor_(new FieldsEditor(taskSheet(), scroll_)),
      outcome_(new Outcome(QStringLiteral("task"), tr("Nothing was changed in this task."), side_)),
      settle_(new QTimer(this)) {
    find_->setObjectName(QStringLiteral("tasksFind"));
    find_->setPlaceholderText(tr("find a task: name, position, source"));
    find_->setAccessibleName(find_->placeholderText());
    find_->setClearButtonEnabled(true);
    progress_->setObjectName(QStringLiteral("tasks-progress"));
    progress_->setProperty("role", QStringLiteral("note"));
    new_->setObjectName(QStringLiteral("task-new"));
    table_->setObjectName(QStringLiteral("tasksTable"));
    table_->setAccessibleName(tr("tasks"));
    table_->setMostLines(2);  // the rest stands in the fields below
    scroll_->setObjectName(QStringLiteral("task-scroll"));
    scroll_->setFocusPolicy(Qt::NoFocus);
    settle_->setSingleShot(true);
    settle_->setInterval(kPauseMs);
    layOut();
    connectParts();
    connectKeys();
}

void TasksPage::layOut() {
    scroll_->setWidgetResizable(true);
    scroll_->setFrameShape(QFrame::NoFrame);
    scroll_->setWidget(editor_);
    scroll_->viewport()->setAutoFillBackground(false);
    editor_->setAutoFillBackground(false);
    auto* sideLines = linesOf(side_);
    sideLines->addWidget(head_);
    sideLines->addWidget(scroll_, 1);
    sideLines->addWidget(outcome_);
    parts_ = columnsOf(this, {{table_, 1100}, {side_, 720}});
    parts_->setStyleSheet(QStringLiteral("QSplitter::handle:vertical { background: transparent; }"));
    table_->setColumnHidden(TaskAbout, true);
    auto* top = new QHBoxLayout;
    top->setSpacing(kSpaceLine);
    top->addWidget(find_, 1);
    top->addWidget(progress_);
    top->addWidget(new_);
    auto* lines = pageLines(this);
    lines->addLayout(top);
    lines->addWidget(offer_, 1);
    lines->addWidget(parts_, 1);
}

void TasksPage::connectParts() {
    connect(find_, &QLineEdit::textChanged, table_, &RowTable::filter);
    connect(table_, &RowTable::chosenChanged, this, &TasksPage::showTask);
    connect(table_, &RowTable::activatedId, this, [this] {
        const auto* version = chosenVersion();
        editor_->goTo(version == nullptr || version->limits.empty()
                          ? base::Place("name")
                          : base::Place("every").within("limits", 0));
    });
    connect(editor_, &FieldsEditor::edited, this, [this] { keep(editor_->draft()); });
    connect(editor_, &FieldsEditor::saveAsked, this, &TasksPage::saveAndReturn);
    connect(editor_, &FieldsEditor::openAsked, this,
            [this](const std::string& /*steps*/, const QString& code) { openStep(code); });
    // Once a fold that was opened for it has its place. The line of the field may be gone by then.
    connect(editor_, &FieldsEditor::wentTo, this, [this](QWidget* field) {
        QTimer::singleShot(0, this, [this, wanted = QPointer<QWidget>(field)] {
            if (wanted && editor_->isAncestorOf(wanted))
                scroll_->ensureWidgetVisible(wanted);
        });
    });
    connect(outcome_, &Outcome::saveAsked, this, &TasksPage::saveAndReturn);
    connect(outcome_, &Outcome::dropAsked, this, &TasksPage::dropDraft);
    connect(head_, &TaskHead::confirmAsked, this, &TasksPage::confirm);
    connect(head_, &TaskHead::switchAsked, this, &TasksPage::switchOnOrOff);
    connect(head_, &TaskHead::copyAsked, this, &TasksPage::copyTo);
    connect(head_, &TaskHead::newOnAsked, this, [this] { beginCount(tr("new")); });
    connect(head_, &TaskHead::doneOnAsked, this, [this] { beginCount(QString()); });
    connect(head_, &TaskHead::lookedFineAsked, this, &TasksPage::recordLookedFine);
    connect(new_, &QPushButton::clicked, this, &TasksPage::addTask);
    connect(offer_, &ScheduleOffer::beginAsked, this, &TasksPage::begin);
    connect(settle_, &QTimer::timeout, this, &TasksPage::foretell);
    connect(&workbench(), &Workbench::fileChanged, this, [this] {
        drafts_.dropAll();
        chosen_.reset();
    });
}

void TasksPage::connectKeys() {
    const auto on = [this](const QKeySequence& keys, QWidget* where, Qt::ShortcutContext context, auto act) {
        auto* shortcut = new QShortcut(keys, where);
        shortcut->setContext(context);
        connect(shortcut, &QShortcut::activated, this, act);
    };
    on(QKeySequence(Qt::Key_F12), this, Qt::WidgetWithChildrenShortcut, &TasksPage::confirm);
    on(QKeySequence(Qt::Key_Insert), this, Qt::WidgetWithChildrenShortcut, &TasksPage::addTask);
    on(QKeySequence::Save, this, Qt::WidgetWithChildrenShortcut, &TasksPage::saveAndReturn);
    on(QKeySequence(Qt::Key_Delete), table_, Qt::WidgetShortcut, &TasksPage::switchOnOrOff);
}

QWidget* TasksPage::firstFocus() {
    if (offer_->isVisibleTo(this))
        return offer_;
    return table_;
}

bool TasksPage::find() {
    find_->setFocus();
    find_->selectAll();
    return true;
}

void TasksPage::why() {
    if (const auto* line = chosenLine())
        guide().explain(table_, whyOf(*workbench().book(), *line));
}

// Escape in the fields goes back to the table; the window would take it for "all machines".
bool TasksPage::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && side_->isAncestorOf(focusWidget()) &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return Page::event(event);
}

void TasksPage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && side_->isAncestorOf(focusWidget()))
        table_->setFocus(Qt::OtherFocusReason);
    else
        Page::keyPressEvent(event);
}

void TasksPage::resizeEvent(QResizeEvent* event) {
    Page::resizeEvent(event);
    const bool beside = width() >= kWideEnough;
    const auto wanted = beside ? Qt::Horizontal : Qt::Vertical;
    if (parts_->orientation() == wanted)
        return;
    parts_->setOrientation(wanted);
    parts_->setSizes(beside ? QList<int>{1100, 720} : QList<int>{200, 360});
    editor_->setAcross(!beside);
    table_->setColumnHidden(TaskAbout, beside);  // it stands in the fields; find still looks there
}

void TasksPage::refresh() {
    const auto book = workbench().book();
    showRows();
    const Confirmed count = confirmedOf(*book, workbench().chosen());
    progress_->setText(tr("%1 of %2 confirmed").arg(count.confirmed).arg(count.all));
    chosen_.reset();  // the choices in the fields may be others now
    showTask();
}

void TasksPage::showRows() {
    const auto chosen = workbench().chosen();
    auto rows = taskRows(*workbench().book(), chosen, drafts_, palette());
    const auto machine = machineShown(workbench());
    const auto* card = machine ? workbench().book()->ledger().find<items::Machine>(*machine) : nullptr;
    offer_->offerTo(card == nullptr ? QString() : text(card->name), !workbench().readOnly());
    offer_->setVisible(rows.empty());
    parts_->setVisible(!rows.empty());
    table_->setColumnHidden(TaskMachine, chosen.has_value());
    table_->show(std::move(rows));
}

const upkeep::TaskVersion* TasksPage::chosenVersion() const {
    const auto id = table_->chosenId();
    if (!id)
        return nullptr;
    if (const auto* begun = drafts_.find(*id))
        return &begun->base;
    return *id > 0 ? workbench().book()->task(TaskId(*id)) : nullptr;
}

const book::DueLine* TasksPage::chosenLine() const {
    const auto id = table_->chosenId();
    return id && *id > 0 ? workbench().book()->dueLine(TaskId(*id)) : nullptr;
}

void TasksPage::showTask() {
    const auto* version = chosenVersion();
    side_->setVisible(version != nullptr);
    if (version == nullptr) {
        chosen_.reset();
        return;
    }
    const auto id = table_->chosenId();
    if (id == chosen_)
        return;
    chosen_ = id;
    const auto* begun = drafts_.find(*id);
    editor_->setEnabled(!workbench().readOnly());
    new_->setEnabled(!workbench().readOnly());
    editor_->clearFaults();
    editor_->offer(taskChoices(workbench().book(), *version));
    editor_->show(begun != nullptr ? begun->draft : draftOf(*version));
    showHead();
    foretell();
}

void TasksPage::showHead() {
    const auto book = workbench().book();
    const auto* version = chosenVersion();
    const auto* line = chosenLine();
    const auto* now = book->task(version->task);
    TaskHead::About about{.name = text(version->name),
                          .isNew = *chosen_ < 0,
                          .inUse = version->active,
                          .noRecord = line != nullptr && line->countdown.noRecord,
                          .lookSettles = upkeep::isALook(*version)};
    if (const auto* machine = book->ledger().find<items::Machine>(version->machine))
        about.state = text(machine->name);
    if (about.isNew)
        about.state += tr(" · not in the file yet");
    else if (now != nullptr && now->id != version->id)
        about.state += tr(" · changed in the file since this was begun: saving puts what stands here");
    else if (line != nullptr)
        about.state += QStringLiteral(" · ") + howFar(*line, book->today());
    else
        about.state += tr(" · switched off");
    if (about.name.isEmpty())
        about.name = tr("New task");
    for (const auto* machine : book->machines())
        if (machine->id != version->machine)
            about.others.emplace_back(machine->id, text(machine->name));
    head_->show(about);
    head_->setEnabled(!workbench().readOnly());
}

void TasksPage::keep(const Draft& draft) {
    const auto* version = chosenVersion();
    if (version == nullptr)
        return;
    const bool wasBegun = drafts_.find(*chosen_) != nullptr;
    drafts_.keep(*chosen_, upkeep::TaskVersion(*version), draft);
    if (*chosen_ < 0 || wasBegun != (drafts_.find(*chosen_) != nullptr))
        showRows();
    settle_->start();
}

void TasksPage::foretell() {
    settle_->stop();
    const auto* begun = chosen_ ? drafts_.find(*chosen_) : nullptr;
    if (begun == nullptr)
        return outcome_->rest();
    const auto today = workbench().today();
    const auto version = versionFrom(begun->draft, begun->base, today);
    if (!version)
        return outcome_->complain(wordsFor(version.error().front()));
    const auto seen = verbs::whatIf(
        *workbench().book(),
        [&](const verbs::VerbContext& context) { return verbs::saveTask(context, *version); },
        begun->base.machine);
    if (!seen)
        return outcome_->complain(wordsFor(seen.error()));
    outcome_->foretell(dueChangeWords(seen->moves, today, kMovesShown));
}

}  // namespace wm::ui
