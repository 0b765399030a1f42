// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/adjust_view.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/pages/columns.h"
#include "ui/pages/key_row.h"
#include "ui/pages/machine_shown.h"
#include "ui/pages/tasks/task_rows.h"
#include "ui/tables/row_table.h"
#include "ui/theme/plain.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

constexpr std::int64_t kMostPercent = 500;

enum Column { Name, Now, Then, InUse };

}  // namespace

bool AdjustView::Draft::isBegun() const {
    return percent.trimmed() != QLatin1String("100") || !turned.empty() || !edges.empty();
}

AdjustView::AdjustView(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      head_(plainLabel(this, nullptr, "adjust-head")),
      percent_(new QLineEdit(this)),
      words_(plainLabel(this, nullptr, "adjust-words")),
      table_(new RowTable({tr("Task, or what comes off first"), tr("Interval now"), tr("Then"), tr("In use")},
                          Name, this)),
      write_(new QPushButton(tr("Write it (Enter)"), this)),
      clear_(new QPushButton(tr("Forget it"), this)) {
    percent_->setObjectName(QStringLiteral("adjust-percent"));
    percent_->setAccessibleName(tr("all intervals, in percent"));
    percent_->setMaximumWidth(fontMetrics().averageCharWidth() * 8);
    table_->setObjectName(QStringLiteral("adjustTable"));
    table_->setAccessibleName(tr("tasks and access of the schedule"));
    table_->setSortingEnabled(false);
    write_->setObjectName(QStringLiteral("adjust-write"));
    clear_->setObjectName(QStringLiteral("adjust-clear"));
    layOut();
    connect(percent_, &QLineEdit::textEdited, this, [this](const QString& typed) {
        draft().percent = typed;
        showRows();
    });
    connect(percent_, &QLineEdit::returnPressed, this, &AdjustView::write);
    connect(table_, &RowTable::toggledId, this, &AdjustView::toggle);
    connect(table_, &RowTable::activatedId, this, [this] { write(); });
    connect(write_, &QPushButton::clicked, this, &AdjustView::write);
    connect(clear_, &QPushButton::clicked, this, &AdjustView::clear);
    connect(&workbench(), &Workbench::fileChanged, this, [this] {
        drafts_.clear();
        machine_.reset();
    });
}

void AdjustView::layOut() {
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpaceClose);
    auto* label = new QLabel(tr("all intervals at"), this);
    label->setBuddy(percent_);
    row->addWidget(label);
    row->addWidget(percent_);
    row->addWidget(new QLabel(tr("%: under 100 for sand, mud and hard riding"), this));
    row->addStretch();
    row->addLayout(keyRow(this, {{QStringLiteral("adjust-switch"), tr("switch the line Space"), [this] {
                                      if (const auto id = table_->chosenId())
                                          toggle(*id);
                                  }}}));
    row->addWidget(clear_);
    row->addWidget(write_);
    auto* lines = pageLines(this);
    lines->addWidget(head_);
    lines->addLayout(row);
    lines->addWidget(words_);
    lines->addWidget(table_, 1);
}

QWidget* AdjustView::firstFocus() {
    return percent_->isEnabled() ? static_cast<QWidget*>(percent_) : table_;
}

QStringList AdjustView::unsaved() const {
    const bool any =
        std::any_of(drafts_.begin(), drafts_.end(), [](const auto& each) { return each.second.isBegun(); });
    return any ? QStringList{tr("an adjusted schedule")} : QStringList();
}

// Escape in the field goes to the table; the window would take it for "all machines".
bool AdjustView::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && percent_->hasFocus() &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return Page::event(event);
}

void AdjustView::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && percent_->hasFocus())
        table_->setFocus(Qt::OtherFocusReason);
    else
        Page::keyPressEvent(event);
}

void AdjustView::refresh() {
    const auto book = workbench().book();
    machine_ = machineShown(workbench());
    const auto* machine = machine_ ? book->ledger().find<items::Machine>(*machine_) : nullptr;
    head_->setText(
        machine == nullptr
            ? tr("Choose the machine first (F5 to F8): a schedule is of one machine.")
            : tr("The schedule of %1, made to fit in one go. Space switches a line. What is confirmed "
                 "against a manual is never scaled, nor is the calendar; a life limit is never "
                 "stretched.")
                  .arg(text(machine->name)));
    const bool writes = machine != nullptr && !workbench().readOnly();
    percent_->setEnabled(writes);
    table_->setVisible(machine != nullptr);
    if (machine != nullptr && percent_->text() != draft().percent)
        percent_->setText(draft().percent);
    sayIn(words_, QString());
    showRows();
}

base::Result<std::int64_t> AdjustView::percent() const {
    return units::parseCount("percent", percent_->text().trimmed().toStdString(), kMostPercent);
}

void AdjustView::showRows() {
    std::vector<TableRow> rows;
    edges_.clear();
    if (machine_) {
        addEdges(rows);
        addTasks(rows);
    }
    const bool begun = machine_ && draft().isBegun();
    write_->setEnabled(begun && !workbench().readOnly());
    clear_->setEnabled(begun);
    table_->show(std::move(rows));
    if (machine_ && !percent())
        sayIn(words_, wordsFor(percent().error()), true);
    else
        sayIn(words_, QString());
}

void AdjustView::addEdges(std::vector<TableRow>& rows) {
    const auto book = workbench().book();
    for (const auto* step : book->steps(*machine_))
        for (const weekend::Need& need : step->needs) {
            const auto* other = book->step(*machine_, need.code);
            if (!need.onlySomeModels || other == nullptr)
                continue;
            edges_.emplace_back(step->step, need.code);
            const bool turned = draft().edges.contains(edges_.back());
            const auto words = [](bool applies) { return applies ? tr("comes off first") : tr("stays on"); };
            rows.push_back({.id = -static_cast<std::int64_t>(edges_.size()),
                            .cells = {{.text = tr("%1, for: %2").arg(text(other->name), text(step->name))},
                                      {.text = words(need.applies), .pencil = turned},
                                      {.text = turned ? words(!need.applies) : QString()},
                                      {}}});
        }
}

void AdjustView::addTasks(std::vector<TableRow>& rows) {
    const auto book = workbench().book();
    auto tasks = book->tasks(*machine_);
    const auto off = switchedOff(*book, *machine_);
    tasks.insert(tasks.end(), off.begin(), off.end());
    const std::int64_t scale = percent().value_or(100);
    for (const auto* task : tasks) {
        const bool turned = draft().turned.contains(task->task);
        const bool inUse = task->active != turned;
        upkeep::TaskVersion then = *task;
        if (scale > 0 && task->active)
            then.limits = verbs::scaledLimits(*task, scale);
        const bool moves = inUse && then.limits != task->limits;
        rows.push_back({.id = task->task.value(),
                        .cells = {{.text = text(task->name), .pencil = !inUse},
                                  {.text = intervalWords(*book, *task),
                                   .pencil = moves,
                                   .unconfirmed = !task->confirmed},
                                  {.text = moves ? intervalWords(*book, then) : QString()},
                                  {.text = inUse    ? turned ? tr("yes, again") : tr("yes")
                                              : turned ? tr("no longer")
                                                    : tr("no"),
                                   .pencil = !turned}},
                        .toolTip = text(task->howTo)});
    }
}

void AdjustView::toggle(std::int64_t id) {
    if (!machine_ || workbench().readOnly())
        return;
    const auto flip = [](auto& set, const auto& value) {
        if (!set.insert(value).second)
            set.erase(value);
    };
    if (id > 0)
        flip(draft().turned, TaskId{id});
    else if (const auto at = static_cast<std::size_t>(-id - 1); at < edges_.size())
        flip(draft().edges, EdgeName(edges_[at]));
    showRows();
}

verbs::Adjustment AdjustView::adjustment(std::int64_t percent) {
    const auto book = workbench().book();
    verbs::Adjustment wanted{.percent = percent};
    for (const TaskId task : draft().turned)
        if (const auto* version = book->task(task))
            (version->active ? wanted.off : wanted.on).push_back(task);
    for (const auto* step : book->steps(*machine_))
        for (const weekend::Need& need : step->needs)
            if (draft().edges.contains({step->step, need.code}))
                wanted.edges.push_back({step->step, need.code, !need.applies});
    return wanted;
}

void AdjustView::write() {
    if (!machine_ || workbench().readOnly())
        return;
    const auto scale = percent();
    if (!scale)
        return sayIn(words_, wordsFor(scale.error()), true);
    if (!draft().isBegun())
        return sayIn(words_, tr("Nothing is changed yet: type a percentage, or switch lines with Space."));
    const auto written = workbench().attempt(
        [machine = *machine_, wanted = adjustment(*scale)](const verbs::VerbContext& context) {
            return verbs::adjustSchedule(context, machine, wanted);
        });
    if (!written)
        return sayIn(words_, wordsFor(written.error()), true);
    clear();
}

void AdjustView::clear() {
    if (machine_)
        drafts_.erase(*machine_);
    refresh();
    table_->setFocus(Qt::OtherFocusReason);
}

}  // namespace wm::ui
