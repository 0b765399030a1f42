// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/baseline_view.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/entry/flow.h"
#include "ui/pages/columns.h"
#include "ui/pages/machine_shown.h"
#include "ui/pages/tasks/baseline_since.h"
#include "ui/pages/tasks/baseline_table.h"
#include "ui/pages/tasks/baseline_words.h"
#include "ui/theme/plain.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/words/part_words.h"
#include "ui/words/standing_words.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/prompts.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

// The keys come back to the field by themselves from another window, or from the field's own menu.
bool goesElsewhere(Qt::FocusReason reason) {
    return reason != Qt::ActiveWindowFocusReason && reason != Qt::PopupFocusReason;
}

}  // namespace

BaselineView::BaselineView(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      head_(plainLabel(this, nullptr, "baseline-head")),
      table_(new BaselineTable(this)),
      whenLabel_(plainLabel(this, "note", "baseline-when-label")),
      when_(new QLineEdit(this)),
      since_(new BaselineSince(this)),
      words_(plainLabel(this, nullptr, "baseline-words")),
      write_(key("baseline-write", QString())),
      clear_(key("baseline-clear", tr("Forget the answers"))) {
    when_->setObjectName(QStringLiteral("baseline-when"));
    when_->setAccessibleName(tr("day or hours"));
    when_->installEventFilter(this);
    layOut();
    connectParts();
}

QPushButton* BaselineView::key(const char* name, const QString& words) {
    auto* button = new QPushButton(words, this);
    button->setObjectName(QLatin1String(name));
    button->setAutoDefault(false);
    return button;
}

void BaselineView::layOut() {
    auto* answers = new Flow(kSpaceClose, kSpaceHair);
    const auto add = [&](const char* name, const QString& words, auto&& does) {
        keys_.push_back(key(name, words));
        keys_.back()->setFocusPolicy(Qt::NoFocus);
        connect(keys_.back(), &QPushButton::clicked, this, does);
        answers->addWidget(keys_.back());
    };
    add("baseline-new", tr("New (N)"), [this] { say(Said::New); });
    add("baseline-never", tr("First one, never done (O)"), [this] { say(Said::NeverDone); });
    add("baseline-serviced", tr("Serviced… (S)"), [this] { say(Said::Serviced); });
    add("baseline-fine", tr("Looked at today: fine (F)"), [this] { say(Said::Fine); });
    add("baseline-unknown", tr("Unknown (U)"), [this] { say(Said::Unknown); });
    add("baseline-group", tr("Mark its group (G)"), [this] { chooseRows(true); });
    add("baseline-all", tr("Mark all (Ctrl+A)"), [this] { chooseRows(false); });
    auto* done = new QHBoxLayout;
    done->setSpacing(kSpaceClose);
    done->addWidget(words_, 1);
    done->addStretch();
    done->addWidget(clear_);
    done->addWidget(write_);
    auto* when = new QHBoxLayout;
    when->setSpacing(kSpaceClose);
    when_->setMaximumWidth(fontMetrics().averageCharWidth() * 30);
    whenLabel_->setBuddy(when_);
    // The field stands beside its question, however long that is.
    when->addWidget(when_, 1);
    when->addWidget(whenLabel_, 3);
    auto* lines = pageLines(this);
    lines->addWidget(head_);
    lines->addWidget(table_, 1);
    lines->addLayout(when);
    lines->addLayout(answers);
    lines->addWidget(since_);
    lines->addLayout(done);
}

void BaselineView::connectParts() {
    connect(write_, &QPushButton::clicked, this, &BaselineView::write);
    connect(clear_, &QPushButton::clicked, this, &BaselineView::clear);
    connect(table_, &RowTable::toggledId, this, [this](std::int64_t id) {
        if (id == kFold)
            unfold();
    });
    connect(table_, &RowTable::activatedId, this,
            [this](std::int64_t id) { id == kFold ? unfold() : write(); });
    connect(table_, &BaselineTable::answered, this, &BaselineView::say);
    connect(table_, &BaselineTable::groupAsked, this, [this] { chooseRows(true); });
    connect(table_, &BaselineTable::allAsked, this, [this] { chooseRows(false); });
    connect(table_, &RowTable::chosenChanged, this, &BaselineView::showWhen);
    connect(since_, &BaselineSince::changed, this, &BaselineView::showHead);
    connect(since_, &BaselineSince::entered, this, &BaselineView::write);
    connect(&workbench(), &Workbench::fileChanged, this, [this] {
        asking_.reset();
        when_->clear();
        since_->clear();
    });
}

QWidget* BaselineView::firstFocus() {
    return table_;
}

QStringList BaselineView::unsaved() const {
    const std::size_t all = asking_.unsaved(when_->text());
    return all == 0 ? QStringList() : QStringList{tr("what is known of %1").arg(tasksWords(all))};
}

void BaselineView::why() {
    if (const auto id = table_->chosenId())
        if (const auto* due = line(TaskId{*id}))
            guide().explain(table_, whyOf(*workbench().book(), *due));
}

void BaselineView::refresh() {
    const auto book = workbench().book();
    const auto machine = machineShown(workbench());
    sayIn(words_, QString());
    if (machine != asking_.machine()) {
        leaveWhen();  // what is typed was said of the machine that was seen until now
        when_->clear();
    }
    asking_.refresh(*book, machine);
    showRows();
}

const book::DueLine* BaselineView::line(TaskId task) const {
    return workbench().book()->dueLine(task);
}

QString BaselineView::nameOf(TaskId task) const {
    const auto* due = line(task);
    return due == nullptr ? QString() : text(due->task->name);
}

void BaselineView::showRows() {
    showHead();
    table_->show(baselineRows(*workbench().book(), asking_));
    showWhen();
}

void BaselineView::showHead() {
    const auto book = workbench().book();
    const auto& tasks = asking_.tasks();
    const auto& answers = asking_.answers();
    const auto* machine =
        asking_.machine() ? book->ledger().find<items::Machine>(*asking_.machine()) : nullptr;
    const auto said = std::count_if(answers.begin(), answers.end(),
                                    [](const auto& each) { return each.second.said != Said::Unknown; });
    const auto unknown = static_cast<std::ptrdiff_t>(answers.size()) - said;
    const bool writes = machine != nullptr && !tasks.empty() && !workbench().readOnly();
    head_->setText(
        machine == nullptr ? tr("Choose the machine first (F5 to F8): what is known is said of one machine.")
        : tasks.empty()    ? tr("%1: every task has a record or a known start.").arg(text(machine->name))
                           : tr("%1: %2 of which too little is known. Treat it as dry and old: check these "
                                   "first, the worst harm first. A key answers all lines that are marked. What "
                                   "nobody knows stays unknown, and is never taken for done.")
                              .arg(text(machine->name), tasksWords(tasks.size())));
    table_->setVisible(!tasks.empty());
    table_->takeAnswers(!workbench().readOnly());
    for (QWidget* part : std::initializer_list<QWidget*>{whenLabel_, when_})
        part->setVisible(!tasks.empty());
    for (QPushButton* button : keys_)
        button->setEnabled(writes);
    write_->setText(said == 0 ? tr("Write the answers (Enter)")
                    : unknown == 0
                        ? tr("Write the %1 answered (Enter)").arg(said)
                        : tr("Write the %1 answered, %2 left unknown (Enter)").arg(said).arg(unknown));
    since_->setVisible(!tasks.empty());
    since_->setReadOnly(workbench().readOnly());
    write_->setEnabled(writes && (said > 0 || !since_->isEmpty()));
    clear_->setEnabled(!answers.empty());
}

// While nothing is asked, the field shows what was typed for the chosen line.
void BaselineView::showWhen() {
    if (asking_.isAsking() || !asking_.machine())
        return;
    const auto id = table_->chosenId();
    const auto* due = id && *id != kFold ? line(TaskId{*id}) : nullptr;
    const auto* answer = due == nullptr ? nullptr : asking_.answerTo(due->task->task);
    const bool hasWhen = answer != nullptr && answer->said != Said::Unknown;
    when_->setText(hasWhen ? answer->when : QString());
    when_->setEnabled(hasWhen && !workbench().readOnly());
    whenLabel_->setText(
        due == nullptr ? QString()
        : hasWhen      ? tr("%1, %2: another day (Tab)").arg(text(due->task->name), saidWords(answer->said))
                  : tr("N new · O first one, never done · S serviced · F looked at today: fine · U unknown"));
}

// The cursor goes to the first line that was hidden, where the fold stood.
void BaselineView::unfold() {
    const auto before = table_->shownIds();
    const bool onFold = table_->chosenId() == kFold;
    asking_.unfold();
    showRows();
    if (!onFold)
        return;
    for (const std::int64_t id : table_->shownIds())
        if (std::find(before.begin(), before.end(), id) == before.end())
            return table_->moveTo(id);
}

// Marks every line, or those about the same part of the machine; what is folded is unfolded, so that nothing
// is answered unseen.
void BaselineView::chooseRows(bool wholeGroup) {
    const auto here = table_->chosenId();
    const auto* due = here && *here != kFold ? line(TaskId{*here}) : nullptr;
    if (wholeGroup && due == nullptr)
        return;
    unfold();
    table_->mark([&](TaskId task) {
        const auto* other = line(task);
        return !wholeGroup || (other != nullptr && partWords(*other->task) == partWords(*due->task));
    });
    sayIn(words_, tr("%1 marked: a key answers those that have no answer yet.")
                      .arg(tasksWords(table_->markedTasks().size())));
}

bool BaselineView::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && watched == when_ &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();  // the window would take it for "all machines"
        return true;
    }
    if (event->type() == QEvent::FocusIn && watched == when_ && !asking_.isAsking())
        if (const auto tasks = table_->markedTasks(); tasks.size() == 1)
            asking_.goBackTo(tasks.front());
    if (event->type() == QEvent::FocusOut && watched == when_ && workbench().book() &&
        goesElsewhere(static_cast<QFocusEvent*>(event)->reason()))
        leaveWhen();
    if (event->type() != QEvent::KeyPress)
        return Page::eventFilter(watched, event);
    return (watched == when_ && whenKey(static_cast<QKeyEvent*>(event)->key())) ||
           Page::eventFilter(watched, event);
}

bool BaselineView::whenKey(int key) {
    if (key == Qt::Key_Return || key == Qt::Key_Enter) {
        takeWhen();
        return true;
    }
    if (key != Qt::Key_Escape)
        return false;
    dropWhen();
    sayIn(words_, QString());
    table_->setFocus(Qt::OtherFocusReason);
    return true;
}

void BaselineView::say(Said said) {
    const auto tasks = table_->markedTasks();
    if (tasks.empty() || !asking_.machine())
        return;
    if (said == Said::New && tasks.size() > 1 && tasks.size() == asking_.tasks().size() && !mayAllBeNew())
        return;
    if (asking_.begin(said, tasks))
        return askWhen();
    take(QString());
}

// Everything new on a machine that came used is said by a slip of the finger rather than meant.
bool BaselineView::mayAllBeNew() {
    const auto* machine = workbench().book()->ledger().find<items::Machine>(*asking_.machine());
    if (machine == nullptr || machine->startedNew)
        return true;
    return prompts().confirm(tr("%1 came used. Was really everything new on it that day, %2?")
                                 .arg(text(machine->name), tasksWords(asking_.tasks().size())),
                             tr("All of it was new"));
}

void BaselineView::askWhen() {
    const auto& tasks = asking_.askedOf();
    const QString whom = tasks.size() == 1 ? nameOf(tasks.front()) : tasksWords(tasks.size());
    whenLabel_->setText(
        asking_.asked() == Said::New
            ? tr("%1: new on which day?").arg(whom)
            : tr("%1: serviced when? Written down: 3 May 2025 41.5 h. Remembered: 10..15..25 h ago")
                  .arg(whom));
    when_->setEnabled(true);
    when_->setText(asking_.typedBefore());
    when_->setFocus(Qt::OtherFocusReason);
    when_->selectAll();
}

// Why what is typed can't be said of what is asked; nothing if it can.
QString BaselineView::whenFault() const {
    return faultWords(asking_.faultIn(*workbench().book(), when_->text()), nameOf(asking_.askedOf().front()));
}

void BaselineView::takeWhen() {
    if (!asking_.isAsking())
        return;
    if (const QString fault = whenFault(); !fault.isEmpty())
        return sayIn(words_, fault, true);
    take(when_->text().simplified());
    table_->setFocus(Qt::OtherFocusReason);
}

// What was typed stays said when the keys go elsewhere. What can't be said so leaves its line as it was, and
// the field goes back to the line that is chosen.
void BaselineView::leaveWhen() {
    using Leaving = BaselineAsking::Leaving;
    const QString typed = when_->text().simplified();
    switch (asking_.leaving(*workbench().book(), typed)) {
        case Leaving::Nothing:
            return;
        case Leaving::Drop:
            return dropWhen();
        case Leaving::Take:
            return take(typed);
        case Leaving::Refuse:
            break;
    }
    const QString words = QStringLiteral("%1: %2").arg(nameOf(asking_.askedOf().front()), whenFault());
    dropWhen();
    sayIn(words_, words, true);
}

void BaselineView::dropWhen() {
    asking_.drop();
    showWhen();
}

void BaselineView::take(const QString& typed) {
    const auto taken = asking_.take(*workbench().book(), typed);
    sayIn(words_, takenWords(taken, nameOf(taken.first)), taken.alone && taken.left > 0);
    showRows();
    if (taken.left == 0 || !taken.alone)
        table_->moveTo(asking_.nextOpen(table_->shownIds(), taken.last));
}

void BaselineView::write() {
    if (!asking_.machine() || workbench().readOnly())
        return;
    const auto lines = asking_.lines(workbench().today());
    if (!lines)
        return showFault(lines.error().task, lines.error().error);
    const auto since = since_->said();
    if (!since)
        return sayIn(words_, wordsFor(since.error()), true);
    if (lines->empty() && since->pieces.empty())
        return sayIn(
            words_,
            asking_.answers().empty()
                ? tr("Nothing is answered yet: N new, O first one, S serviced, F looked at today and fine.")
                : tr("What nobody knows is not written: it stays without a record."));
    const auto written = workbench().attempt(
        [machine = *asking_.machine(), lines = *lines, all = *since](const verbs::VerbContext& context) {
            return verbs::recordBaseline(context, machine, lines, all);
        });
    if (!written && written.error().kind == store::ApplyError::Kind::Refused) {
        base::Error error = written.error().error;
        if (error.field.lines.empty() || error.field.lines.front().at >= lines->size())
            return sayIn(words_, wordsFor(error), true);
        const std::size_t at = error.field.lines.front().at;
        error.field = error.field.inner();
        return showFault((*lines)[at].task, error);
    }
    if (!written)
        return sayIn(words_, wordsFor(written.error()), true);
    asking_.clearWritten();
    since_->clear();
    asking_.fold();
    refresh();
    table_->setFocus(Qt::OtherFocusReason);
}

void BaselineView::showFault(TaskId task, const base::Error& error) {
    table_->moveTo(task.value());
    sayIn(words_, QStringLiteral("%1: %2").arg(nameOf(task), wordsFor(error)), true);
}

void BaselineView::clear() {
    asking_.clear();
    sayIn(words_, QString());
    showRows();
    table_->setFocus(Qt::OtherFocusReason);
}

}  // namespace wm::ui
