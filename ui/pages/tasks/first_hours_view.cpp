// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/first_hours_view.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QStringList>
#include <QToolButton>
#include <QVBoxLayout>

#include "core/book/first_hours.h"
#include "ui/drawing/mark_of.h"
#include "ui/pages/columns.h"
#include "ui/pages/key_row.h"
#include "ui/pages/machine_shown.h"
#include "ui/pages/tasks/task_rows.h"
#include "ui/tables/row_table.h"
#include "ui/theme/tokens.h"
#include "ui/words/figures.h"
#include "ui/words/standing_words.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

using book::FirstStage;

enum Column { What, Interval, Class, Minutes };

QString stageWords(FirstStage stage) {
    switch (stage) {
        case FirstStage::AtOnce:
            return FirstHoursView::tr("At once, before the first ride");
        case FirstStage::WhileOpen:
            return FirstHoursView::tr("While that is open: no opening of its own");
        case FirstStage::By5:
            return FirstHoursView::tr("Within 5 h");
        case FirstStage::By10:
            return FirstHoursView::tr("Within 10 h");
        case FirstStage::By20:
            return FirstHoursView::tr("Within 20 h");
        case FirstStage::Later:
            return FirstHoursView::tr("Not within 20 h, whatever its past");
        case FirstStage::EachRide:
            return FirstHoursView::tr("With every ride");
        case FirstStage::WithAJob:
            break;
    }
    return FirstHoursView::tr("With the job that brings it");
}

// "5 h 40 min"
QString timeWords(units::Minutes minutes) {
    const auto hours = minutes.count() / 60;
    const auto rest = minutes.count() % 60;
    return hours == 0  ? FirstHoursView::tr("%1 min").arg(rest)
           : rest == 0 ? FirstHoursView::tr("%1 h").arg(hours)
                       : FirstHoursView::tr("%1 h %2 min").arg(hours).arg(rest);
}

// What the shared openings save stands with the group.
TableRow groupRow(const book::FirstGroup& group, std::int64_t id) {
    QStringList opened;
    for (const auto* step : group.opened)
        opened << text(step->name);
    QString words = stageWords(group.stage);
    words += FirstHoursView::tr(" · %n job(s)", nullptr, static_cast<int>(group.jobs.size()));
    const QString alone =
        group.alone > group.work
            ? FirstHoursView::tr("each opening once; one by one %1").arg(timeWords(group.alone))
            : QString();
    return {
        .id = id,
        .cells = {{.text = words}, {.text = alone, .pencil = true}, {}, {.text = timeWords(group.work)}},
        .toolTip = opened.isEmpty()
                       ? QString()
                       : FirstHoursView::tr("off and on again: %1").arg(opened.join(QStringLiteral(", ")))};
}

}  // namespace

FirstHoursView::FirstHoursView(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      head_(new QLabel(this)),
      table_(new RowTable({tr("Job"), tr("Interval"), tr("If left undone"), tr("Time")}, What, this)) {
    head_->setObjectName(QStringLiteral("first-hours-head"));
    head_->setTextFormat(Qt::PlainText);
    head_->setWordWrap(true);
    table_->setObjectName(QStringLiteral("firstHoursTable"));
    table_->setAccessibleName(tr("plan for the first 20 hours"));
    table_->setSortingEnabled(false);
    auto* lines = pageLines(this);
    lines->addWidget(head_);
    lines->addWidget(table_, 1);
    auto* keys = keyRow(this, {{QStringLiteral("first-hours-record"), tr("record Enter"), [this] {
                                    if (const auto id = table_->chosenId())
                                        record(*id);
                                }}});
    keys->insertStretch(0);
    lines->addLayout(keys);
    record_ = findChild<QToolButton*>(QStringLiteral("first-hours-record"));
    connect(table_, &RowTable::activatedId, this, &FirstHoursView::record);
    connect(table_, &RowTable::chosenChanged, this, &FirstHoursView::followChosen);
}

// A head of the plan is no job, and without a machine there is no plan.
void FirstHoursView::followChosen() {
    record_->setEnabled(table_->chosenId().value_or(0) > 0);
}

QWidget* FirstHoursView::firstFocus() {
    return table_;
}

void FirstHoursView::refresh() {
    const auto book = workbench().book();
    const auto shown = machineShown(workbench());
    const auto* machine = shown ? book->ledger().find<items::Machine>(*shown) : nullptr;
    std::vector<TableRow> rows;
    std::int64_t group = 0;
    const Tokens tokens = tokensFor(palette());
    if (machine != nullptr)
        for (const auto& each : book::firstHours(*book, machine->id)) {
            rows.push_back(groupRow(each, --group));
            for (const auto* line : each.jobs)
                rows.push_back(
                    {.id = line->task->task.value(),
                     .cells = {{.text = text(line->task->name), .icon = markIcon(markOf(*line), tokens)},
                               {.text = intervalWords(*book, *line->task),
                                .unconfirmed = !line->task->confirmed},
                               {.text = consequenceWords(line->task->consequence)},
                               {.text = timeWords(line->task->minutes), .pencil = true}},
                     .toolTip = text(line->task->howTo)});
        }
    head_->setText(
        machine == nullptr ? tr("Choose the machine first (F5 to F8): the plan is of one machine.")
        : rows.empty()
            ? tr("%1: every task has a record or a known start, nothing is left to plan.")
                  .arg(text(machine->name))
            : tr("%1, history unknown: what nobody has recorded counts as not done. Times are those "
                 "of the schedule. What can hurt comes before the first ride; where you are not sure, "
                 "the manual and a qualified workshop decide. Enter records a job.")
                  .arg(text(machine->name)));
    table_->setVisible(!rows.empty());
    table_->show(std::move(rows));
    followChosen();
}

void FirstHoursView::record(std::int64_t id) {
    const auto* due = id > 0 ? workbench().book()->dueLine(TaskId{id}) : nullptr;
    if (due != nullptr)
        guide().enter({.kind = EntryKind::Job, .machine = due->machine, .task = due->task->task});
}

void FirstHoursView::why() {
    const auto id = table_->chosenId();
    const auto* due = id && *id > 0 ? workbench().book()->dueLine(TaskId{*id}) : nullptr;
    if (due != nullptr)
        guide().explain(table_, whyOf(*workbench().book(), *due));
}

}  // namespace wm::ui
