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

#include "core/book/unrecorded.h"
#include "ui/pages/columns.h"
#include "ui/pages/machine_shown.h"
#include "ui/pages/tasks/task_rows.h"
#include "ui/tables/row_table.h"
#include "ui/theme/plain.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/words/part_words.h"
#include "ui/words/standing_words.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

constexpr int kShown = 10;         // open questions; the rest is folded
constexpr std::int64_t kFold = 0;  // the row that unfolds it

enum Column { Name, About, Interval, Class, Known, Day };

QString saidWords(Said said) {
    switch (said) {
        case Said::New:
            return BaselineView::tr("new on");
        case Said::Serviced:
            return BaselineView::tr("serviced");
        case Said::Fine:
            return BaselineView::tr("looked at: fine");
        case Said::Unknown:
            break;
    }
    return BaselineView::tr("unknown");
}

QString tasksWords(std::size_t count) {
    return count == 1 ? BaselineView::tr("1 task") : BaselineView::tr("%1 tasks").arg(count);
}

TableRow rowOf(const book::Book& book, const book::DueLine& due, const BaselineAnswer* answer) {
    TableRow row{.id = due.task->task.value(),
                 .cells = {{.text = text(due.task->name)},
                           {.text = text(due.task->position), .pencil = true},
                           {.text = intervalWords(book, *due.task), .unconfirmed = !due.task->confirmed},
                           {.text = consequenceWords(due.task->consequence)},
                           {.text = answer != nullptr ? saidWords(answer->said) : QString()},
                           {.text = QString()}},
                 .toolTip = text(due.task->howTo)};
    if (answer == nullptr || answer->said == Said::Unknown)
        return row;
    const auto when = parseWhen(answer->when, book.today());
    const bool isMeant = answer->when.trimmed().isEmpty();
    row.cells[Day] = {.text = !when     ? answer->when
                              : isMeant ? dayWords(dayMeant(book, due, answer->said), book.today())
                                        : whenWords(*when, book.today()),
                      .pencil = isMeant};
    return row;
}

std::optional<Said> saidBy(int key) {
    switch (key) {
        case Qt::Key_N:
            return Said::New;
        case Qt::Key_S:
            return Said::Serviced;
        case Qt::Key_F:
            return Said::Fine;
        case Qt::Key_U:
            return Said::Unknown;
        default:
            return std::nullopt;
    }
}

// The keys come back to the field by themselves from another window, or from the field's own menu.
bool goesElsewhere(Qt::FocusReason reason) {
    return reason != Qt::ActiveWindowFocusReason && reason != Qt::PopupFocusReason;
}

}  // namespace

BaselineView::BaselineView(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      head_(plainLabel(this, nullptr, "baseline-head")),
      table_(new RowTable(
          {tr("Task"), tr("About"), tr("Interval"), tr("If left undone"), tr("What is known"), tr("When")},
          Name, this)),
      whenLabel_(plainLabel(this, "note", "baseline-when-label")),
      when_(new QLineEdit(this)),
      words_(plainLabel(this, nullptr, "baseline-words")),
      write_(key("baseline-write", QString())),
      clear_(key("baseline-clear", tr("Forget the answers"))) {
    table_->setObjectName(QStringLiteral("baselineTable"));
    table_->setAccessibleName(tr("tasks that nobody has recorded"));
    table_->setSelectionMode(QAbstractItemView::ExtendedSelection);
    table_->setSortingEnabled(false);
    table_->installEventFilter(this);
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
    auto* answers = new QHBoxLayout;
    answers->setSpacing(kSpaceClose);
    const std::pair<const char*, QString> names[] = {{"baseline-new", tr("New (N)")},
                                                     {"baseline-serviced", tr("Serviced… (S)")},
                                                     {"baseline-fine", tr("Looked at today: fine (F)")},
                                                     {"baseline-unknown", tr("Unknown (U)")},
                                                     {"baseline-group", tr("Mark its group (G)")},
                                                     {"baseline-all", tr("Mark all (Ctrl+A)")}};
    for (const auto& [name, words] : names) {
        keys_.push_back(key(name, words));
        keys_.back()->setFocusPolicy(Qt::NoFocus);
        answers->addWidget(keys_.back());
    }
    answers->addStretch();
    answers->addWidget(clear_);
    answers->addWidget(write_);
    auto* when = new QHBoxLayout;
    when->setSpacing(kSpaceClose);
    when_->setMaximumWidth(fontMetrics().averageCharWidth() * 30);
    whenLabel_->setBuddy(when_);
    when->addWidget(whenLabel_, 1);
    when->addWidget(when_, 1);
    auto* lines = pageLines(this);
    lines->addWidget(head_);
    lines->addWidget(table_, 1);
    lines->addLayout(when);
    lines->addWidget(words_);
    lines->addLayout(answers);
}

void BaselineView::connectParts() {
    const Said said[] = {Said::New, Said::Serviced, Said::Fine, Said::Unknown};
    for (std::size_t at = 0; at < std::size(said); ++at)
        connect(keys_[at], &QPushButton::clicked, this, [this, what = said[at]] { say(what); });
    connect(keys_[4], &QPushButton::clicked, this, [this] { chooseRows(true); });
    connect(keys_[5], &QPushButton::clicked, this, [this] { chooseRows(false); });
    connect(write_, &QPushButton::clicked, this, &BaselineView::write);
    connect(clear_, &QPushButton::clicked, this, &BaselineView::clear);
    connect(table_, &RowTable::toggledId, this, [this](std::int64_t id) {
        if (id == kFold)
            unfold();
    });
    connect(table_, &RowTable::activatedId, this,
            [this](std::int64_t id) { id == kFold ? unfold() : write(); });
    connect(table_, &RowTable::chosenChanged, this, &BaselineView::showWhen);
    connect(&workbench(), &Workbench::fileChanged, this, [this] {
        answers_.clear();
        askedOf_.clear();
        machine_.reset();
        when_->clear();
    });
}

QWidget* BaselineView::firstFocus() {
    return table_;
}

QStringList BaselineView::unsaved() const {
    std::size_t all = 0;
    for (const auto& [machine, answers] : answers_)
        all += answers.size();
    if (machine_ && !when_->text().trimmed().isEmpty())  // and what is half typed
        all += static_cast<std::size_t>(std::count_if(askedOf_.begin(), askedOf_.end(), [this](TaskId task) {
            return !answers_.at(*machine_).contains(task);
        }));
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
    if (machine != machine_) {
        leaveWhen();  // what is typed was said of the machine that was seen until now
        machine_ = machine;
        unfolded_ = false;
        when_->clear();
    }
    tasks_.clear();
    if (machine_)
        for (const book::DueLine* due : book::unknownOf(*book, *machine_))
            tasks_.push_back(due->task->task);
    if (machine_)  // recorded by now, in some other way
        std::erase_if(answers_[*machine_], [this](const auto& answer) {
            return std::find(tasks_.begin(), tasks_.end(), answer.first) == tasks_.end();
        });
    showRows();
}

const book::DueLine* BaselineView::line(TaskId task) const {
    return workbench().book()->dueLine(task);
}

void BaselineView::showRows() {
    const auto& answers = machine_ ? answers_[*machine_] : BaselineAnswers{};
    std::vector<TableRow> rows;
    int open = 0;
    int folded = 0;
    for (const TaskId task : tasks_) {
        const auto* due = line(task);
        const auto at = answers.find(task);
        const bool answered = at != answers.end();
        if (due == nullptr)
            continue;
        if (!answered && !unfolded_ && open >= kShown) {
            ++folded;
            continue;
        }
        open += answered ? 0 : 1;
        rows.push_back(rowOf(*workbench().book(), *due, answered ? &at->second : nullptr));
    }
    if (folded > 0)
        rows.push_back(
            {.id = kFold,
             .cells = {{.text = tr("%1 more (Space)").arg(folded), .pencil = true}, {}, {}, {}, {}, {}}});
    showHead(answers);
    table_->show(std::move(rows));
    showWhen();
}

void BaselineView::showHead(const BaselineAnswers& answers) {
    const auto book = workbench().book();
    const auto* machine = machine_ ? book->ledger().find<items::Machine>(*machine_) : nullptr;
    const auto said = std::count_if(answers.begin(), answers.end(),
                                    [](const auto& each) { return each.second.said != Said::Unknown; });
    const bool writes = machine != nullptr && !tasks_.empty() && !workbench().readOnly();
    head_->setText(machine == nullptr
                       ? tr("Choose the machine first (F5 to F8): what is known is said of one machine.")
                   : tasks_.empty()
                       ? tr("%1: every task has a record or a known start.").arg(text(machine->name))
                       : tr("%1: %2 without a record. Say what you know, the most pressing first; a "
                            "key answers all lines that are marked. What nobody knows stays unknown, and is "
                            "never taken for done.")
                             .arg(text(machine->name), tasksWords(tasks_.size())));
    table_->setVisible(!tasks_.empty());
    for (QWidget* part : std::initializer_list<QWidget*>{whenLabel_, when_})
        part->setVisible(!tasks_.empty());
    for (QPushButton* button : keys_)
        button->setEnabled(writes);
    write_->setText(said == 0 ? tr("Write the answers (Enter)")
                              : tr("Write the %1 answered (Enter)").arg(said));
    write_->setEnabled(writes && said > 0);
    clear_->setEnabled(!answers.empty());
}

// While nothing is asked, the field shows what was typed for the chosen line.
void BaselineView::showWhen() {
    if (!askedOf_.empty() || !machine_)
        return;
    const auto id = table_->chosenId();
    const auto* due = id && *id != kFold ? line(TaskId{*id}) : nullptr;
    const auto& answers = answers_[*machine_];
    const auto at = due == nullptr ? answers.end() : answers.find(due->task->task);
    const bool hasWhen = at != answers.end() && at->second.said != Said::Unknown;
    when_->setText(hasWhen ? at->second.when : QString());
    when_->setEnabled(hasWhen && !workbench().readOnly());
    whenLabel_->setText(
        due == nullptr ? QString()
        : hasWhen ? tr("%1, %2: another day (Tab)").arg(text(due->task->name), saidWords(at->second.said))
                  : tr("N new · S serviced · F looked at today: fine · U unknown"));
}

std::vector<TaskId> BaselineView::chosenTasks() const {
    std::vector<TaskId> tasks;
    for (const QModelIndex& index : table_->selectionModel()->selectedRows())
        if (const auto id = index.data(TableModel::IdRole).toLongLong(); id != kFold)
            tasks.emplace_back(id);
    return tasks;
}

// The cursor goes to the first line that was hidden, where the fold stood.
void BaselineView::unfold() {
    const auto before = table_->shownIds();
    const bool onFold = table_->chosenId() == kFold;
    unfolded_ = true;
    showRows();
    if (!onFold)
        return;
    for (const std::int64_t id : table_->shownIds())
        if (std::find(before.begin(), before.end(), id) == before.end())
            return moveTo(id);
}

// Marks every line, or those about the same part of the machine; what is folded is unfolded, so that nothing
// is answered unseen.
void BaselineView::chooseRows(bool wholeGroup) {
    const auto here = table_->chosenId();
    const auto* due = here && *here != kFold ? line(TaskId{*here}) : nullptr;
    if (wholeGroup && due == nullptr)
        return;
    unfold();
    QItemSelection all;
    for (int row = 0; row < table_->model()->rowCount(); ++row) {
        const QModelIndex index = table_->model()->index(row, 0);
        const auto* other = line(TaskId{index.data(TableModel::IdRole).toLongLong()});
        if (!wholeGroup || (other != nullptr && partWords(*other->task) == partWords(*due->task)))
            all.select(index, table_->model()->index(row, table_->model()->columnCount() - 1));
    }
    table_->selectionModel()->select(all, QItemSelectionModel::ClearAndSelect);
    sayIn(
        words_,
        tr("%1 marked: a key answers those that have no answer yet.").arg(tasksWords(chosenTasks().size())));
}

bool BaselineView::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && watched == when_ &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();  // the window would take it for "all machines"
        return true;
    }
    if (event->type() == QEvent::FocusIn && watched == when_ && askedOf_.empty())
        if (const auto tasks = chosenTasks(); tasks.size() == 1 && machine_)
            if (const auto at = answers_[*machine_].find(tasks.front()); at != answers_[*machine_].end()) {
                asked_ = at->second.said;
                askedOf_ = tasks;
            }
    if (event->type() == QEvent::FocusOut && watched == when_ && workbench().book() &&
        goesElsewhere(static_cast<QFocusEvent*>(event)->reason()))
        leaveWhen();
    if (event->type() != QEvent::KeyPress)
        return Page::eventFilter(watched, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    const bool taken = watched == table_  ? tableKey(key->key(), key->modifiers())
                       : watched == when_ ? whenKey(key->key())
                                          : false;
    return taken || Page::eventFilter(watched, event);
}

bool BaselineView::tableKey(int key, Qt::KeyboardModifiers modifiers) {
    if (workbench().readOnly())
        return false;
    if (modifiers == Qt::ControlModifier && key == Qt::Key_A) {
        chooseRows(false);
        return true;
    }
    if (modifiers != Qt::NoModifier && modifiers != Qt::ShiftModifier)
        return false;
    if (key == Qt::Key_G) {
        chooseRows(true);
        return true;
    }
    const auto said = saidBy(key);
    if (said)
        say(*said);
    return said.has_value();
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
    if (chosenTasks().empty() || !machine_)
        return;
    askedOf_ = chosenTasks();
    const auto& answers = answers_[*machine_];
    const auto at = answers.find(askedOf_.front());
    const bool again = askedOf_.size() == 1 && at != answers.end() && at->second.said == said;
    if (said == Said::Serviced || (again && said == Said::New))
        return askWhen(said);
    put(said, QString());
}

void BaselineView::askWhen(Said said) {
    asked_ = said;
    const auto* due = line(askedOf_.front());
    const QString whom =
        askedOf_.size() == 1 && due != nullptr ? text(due->task->name) : tasksWords(askedOf_.size());
    whenLabel_->setText(
        said == Said::New
            ? tr("%1: new on which day?").arg(whom)
            : tr("%1: serviced when? A day, hours of the meter, or both: 3 May 2025 41.5 h").arg(whom));
    const auto& answers = answers_[*machine_];
    const auto at = answers.find(askedOf_.front());
    when_->setEnabled(true);
    when_->setText(at != answers.end() && askedOf_.size() == 1 ? at->second.when : QString());
    when_->setFocus(Qt::OtherFocusReason);
    when_->selectAll();
}

// Why what is typed can't be said of what is asked; nothing if it can.
QString BaselineView::whenFault() const {
    const auto when = parseWhen(when_->text(), workbench().today());
    if (!when)
        return wordsFor(when.error());
    if (when->date && *when->date > workbench().today())
        return wordsFor({base::Fault::InFuture, "date", when->date->iso(), {}});
    if (asked_ != Said::Serviced)
        return when->meter ? tr("A day, not hours: hours of the meter are said of a service (S).")
                           : QString();
    if (!when->date && !when->meter)
        return tr("Type the day, or what the hour meter showed; Escape leaves it open.");
    const auto* due = askedOf_.size() == 1 ? line(askedOf_.front()) : nullptr;
    return due != nullptr && !canSay(*due->task, asked_, *when)
               ? tr("%1 counts more than hours: say the day as well.").arg(text(due->task->name))
               : QString();
}

void BaselineView::takeWhen() {
    if (askedOf_.empty())
        return;
    if (const QString fault = whenFault(); !fault.isEmpty())
        return sayIn(words_, fault, true);
    put(asked_, when_->text().simplified());
    table_->setFocus(Qt::OtherFocusReason);
}

// What was typed stays said when the keys go elsewhere. What can't be said so leaves its line as it was, and
// the field goes back to the line that is chosen.
void BaselineView::leaveWhen() {
    if (askedOf_.empty() || !machine_)
        return;
    const auto& answers = answers_[*machine_];
    const auto at = answers.find(askedOf_.front());
    const QString typed = when_->text().simplified();
    const bool stands =
        askedOf_.size() == 1 && at != answers.end() && at->second == BaselineAnswer{asked_, typed};
    if (stands || (asked_ == Said::Serviced && typed.isEmpty()))
        return dropWhen();
    const QString fault = whenFault();
    if (fault.isEmpty())
        return put(asked_, typed);
    const auto* due = line(askedOf_.front());
    dropWhen();
    sayIn(words_, QStringLiteral("%1: %2").arg(due == nullptr ? QString() : text(due->task->name), fault),
          true);
}

void BaselineView::dropWhen() {
    askedOf_.clear();
    showWhen();
}

void BaselineView::put(Said said, const QString& typed) {
    auto tasks = std::move(askedOf_);
    askedOf_.clear();
    auto& answers = answers_[*machine_];
    const When when = parseWhen(typed, workbench().today()).value_or(When{});
    const bool alone = tasks.size() == 1;
    std::size_t left = 0;
    for (const TaskId task : tasks) {
        const auto* due = line(task);
        if (due == nullptr || (!alone && said != Said::Unknown && answers.contains(task)))
            continue;
        if (canSay(*due->task, said, when))
            answers[task] = {said, typed};
        else
            ++left;
    }
    const auto* first = line(tasks.front());
    sayIn(words_,
          left == 0 ? QString()
          : alone
              ? tr("%1 is renewed: looking at it begins no count. Say when it was new (N) or serviced (S).")
                    .arg(first == nullptr ? QString() : text(first->task->name))
          : said == Said::Fine
              ? tr("%1 left open: looking alone does not settle them.").arg(tasksWords(left))
              : tr("%1 left open: they count more than hours, so they need a day.").arg(tasksWords(left)),
          alone && left > 0);
    showRows();
    if (left == 0 || !alone)
        goOnAfter(tasks.back());
}

// To one line alone, whatever was marked and whatever key is held down.
void BaselineView::moveTo(std::int64_t id) {
    table_->choose(id);
    table_->selectionModel()->select(table_->currentIndex(),
                                     QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
}

// The next line that has no answer; the table keeps its place if there is none.
void BaselineView::goOnAfter(TaskId task) {
    const auto ids = table_->shownIds();
    const auto& answers = answers_[*machine_];
    const auto here = std::find(ids.begin(), ids.end(), task.value());
    std::vector<std::int64_t> round(here == ids.end() ? ids.begin() : here + 1, ids.end());
    round.insert(round.end(), ids.begin(), here);
    for (const std::int64_t id : round)
        if (id == kFold || !answers.contains(TaskId{id}))
            return moveTo(id);
    moveTo(task.value());
}

void BaselineView::write() {
    if (!machine_ || workbench().readOnly())
        return;
    const auto lines = linesOf(answers_[*machine_], tasks_, workbench().today());
    if (!lines)
        return showFault(lines.error().task, lines.error().error);
    if (lines->empty())
        return sayIn(words_, tr("Nothing is answered yet: N new, S serviced, F looked at today and fine."));
    const auto written = workbench().attempt([machine = *machine_, lines = *lines](const verbs::Pen& pen) {
        return verbs::recordBaseline(pen, machine, lines);
    });
    if (!written && written.error().kind == store::ApplyError::Kind::Refused) {
        base::Error error = written.error().error;
        const auto open = error.field.find('[');
        const auto close = error.field.find("].");
        const std::size_t at = open == std::string::npos || close == std::string::npos
                                   ? lines->size()
                                   : std::stoul(error.field.substr(open + 1, close - open - 1));
        if (at >= lines->size())
            return sayIn(words_, wordsFor(error), true);
        error.field = error.field.substr(close + 2);
        return showFault((*lines)[at].task, error);
    }
    if (!written)
        return sayIn(words_, wordsFor(written.error()), true);
    answers_[*machine_].clear();
    unfolded_ = false;
    refresh();
    table_->setFocus(Qt::OtherFocusReason);
}

void BaselineView::showFault(TaskId task, base::Error error) {
    moveTo(task.value());
    const auto* due = line(task);
    sayIn(words_,
          QStringLiteral("%1: %2").arg(due == nullptr ? QString() : text(due->task->name), wordsFor(error)),
          true);
}

void BaselineView::clear() {
    if (machine_)
        answers_[*machine_].clear();
    askedOf_.clear();
    sayIn(words_, QString());
    showRows();
    table_->setFocus(Qt::OtherFocusReason);
}

}  // namespace wm::ui
