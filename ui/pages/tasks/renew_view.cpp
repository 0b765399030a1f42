// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/renew_view.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QShortcut>
#include <QVBoxLayout>
#include <algorithm>

#include "core/verbs/task_verbs.h"
#include "ui/entry/starters.h"
#include "ui/pages/columns.h"
#include "ui/pages/machine_shown.h"
#include "ui/pages/tasks/renew_words.h"
#include "ui/pages/tasks/task_rows.h"
#include "ui/tables/row_table.h"
#include "ui/theme/plain.h"
#include "ui/theme/type.h"
#include "ui/words/figures.h"
#include "ui/words/name_words.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

using definitions::Difference;
using definitions::RenewalGroup;

namespace {

enum Column { Name, Group, Changes, Then, Kept };

definitions::Schedule scheduleOf(const exchange::Starter& starter) {
    return {starter.steps, starter.joints, starter.tasks};
}

QString kindWords(Difference::Kind kind) {
    switch (kind) {
        case Difference::Kind::Step:
            return RenewView::tr("new access step");
        case Difference::Kind::Joint:
            return RenewView::tr("new joint, no torque");
        case Difference::Kind::Task:
            break;
    }
    return RenewView::tr("new task");
}

bool changes(const Difference& difference, const char* field) {
    return difference.isNew ||
           std::find(difference.fields.begin(), difference.fields.end(), field) != difference.fields.end();
}

QString thenWords(const book::Book& book, const Difference& difference) {
    if (!difference.then)
        return {};
    if (changes(difference, "limits"))
        return intervalWords(book, *difference.then);
    return changes(difference, "how_to") ? text(difference.then->howTo) : QString();
}

TableRow rowOf(const book::Book& book, const Difference& difference, std::int64_t id) {
    const QString then = thenWords(book, difference);
    return {
        .id = id,
        .cells = {{.text = text(difference.name)},
                  {.text = groupWords(difference.group), .pencil = true},
                  {.text = difference.isNew ? kindWords(difference.kind) : renewedWords(difference.fields)},
                  {.text = then, .unconfirmed = !then.isEmpty()},
                  {.text = renewedWords(difference.kept), .pencil = true}},
        .toolTip = difference.then ? text(difference.then->howTo) : QString()};
}

}  // namespace

RenewView::RenewView(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      starters_(starters()),
      head_(plainLabel(this, nullptr, "renew-head")),
      table_(new RowTable({tr("What"), tr("Comes with"), tr("What changes"), tr("Then"), tr("Yours, stays")},
                          Name, this)) {
    table_->setObjectName(QStringLiteral("renewTable"));
    table_->setAccessibleName(tr("what the schedule says now"));
    table_->setSortingEnabled(false);
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpaceClose);
    auto* lines = pageLines(this);
    lines->addWidget(head_);
    lines->addLayout(row);
    lines->addWidget(table_, 1);
    int key = 0;
    for (const RenewalGroup group :
         {RenewalGroup::Order, RenewalGroup::NewTasks, RenewalGroup::Intervals, RenewalGroup::Words}) {
        addTake(group, ++key);
        row->addWidget(takes_.back().button);
    }
    row->addStretch();
    connect(table_, &RowTable::activatedId, this, &RenewView::goToKeyOf);
}

void RenewView::addTake(RenewalGroup group, int key) {
    auto* button = new QPushButton(this);
    button->setObjectName(QStringLiteral("renew-%1").arg(key));
    connect(button, &QPushButton::clicked, this, [this, group] { take(group); });
    auto* shortcut = new QShortcut(QKeySequence(Qt::ALT | static_cast<Qt::Key>(Qt::Key_0 + key)), this);
    shortcut->setContext(Qt::WidgetWithChildrenShortcut);
    connect(shortcut, &QShortcut::activated, this, [this, group] { take(group); });
    takes_.push_back({group, button, shortcut});
}

QWidget* RenewView::firstFocus() {
    return table_;
}

const exchange::Starter* RenewView::starterHere() const {
    const auto book = workbench().book();
    const auto machine = machineShown(workbench());
    const auto* card = machine ? book->ledger().find<items::Machine>(*machine) : nullptr;
    if (card == nullptr)
        return nullptr;
    const auto at = std::find_if(starters_.begin(), starters_.end(),
                                 [&](const exchange::Starter& each) { return each.name == card->starter; });
    return at == starters_.end() ? nullptr : &*at;
}

std::vector<Difference> RenewView::differencesHere() const {
    const auto* starter = starterHere();
    if (starter == nullptr)
        return {};
    return definitions::differences(*workbench().book(), *machineShown(workbench()), scheduleOf(*starter));
}

std::size_t RenewView::waiting() const {
    return differencesHere().size();
}

void RenewView::showHead() {
    const auto book = workbench().book();
    const auto machine = machineShown(workbench());
    const auto* card = machine ? book->ledger().find<items::Machine>(*machine) : nullptr;
    const auto* starter = starterHere();
    if (card == nullptr)
        return head_->setText(tr("Choose the machine first (F5 to F8): a schedule is of one machine."));
    if (starter == nullptr)
        return head_->setText(tr("%1 did not begin with a schedule of this program: its tasks are its own.")
                                  .arg(text(card->name)));
    const QString name = nameWords(std::string_view(starter->name));
    head_->setText(shown_.empty()
                       ? tr("%1 has all that its schedule says, %2.").arg(text(card->name), name)
                       : tr("The schedule %2, with which %1 began, says more or something else by now. A "
                            "key takes a group over; order and joints first. What you changed or confirmed "
                            "against a manual stays, and so does what is tied to the shelf; undo takes it "
                            "back.")
                             .arg(text(card->name), name));
}

void RenewView::showRows() {
    const auto book = workbench().book();
    std::vector<TableRow> rows;
    for (const Difference& each : shown_)
        rows.push_back(rowOf(*book, each, static_cast<std::int64_t>(rows.size())));
    table_->setVisible(!shown_.empty());
    table_->show(std::move(rows));
    for (std::size_t at = 0; at < takes_.size(); ++at) {
        const auto count = std::count_if(shown_.begin(), shown_.end(), [&](const Difference& each) {
            return each.group == takes_[at].group;
        });
        takes_[at].button->setText(
            tr("%1: %2 (Alt+%3)").arg(groupWords(takes_[at].group)).arg(count).arg(at + 1));
        takes_[at].button->setVisible(!shown_.empty());
        takes_[at].button->setEnabled(count > 0 && !workbench().readOnly());
        takes_[at].shortcut->setEnabled(takes_[at].button->isEnabled());
    }
}

void RenewView::refresh() {
    shown_ = differencesHere();
    showHead();
    showRows();
}

// A line alone takes nothing over: the keys go to what would take its group.
void RenewView::goToKeyOf(std::int64_t row) {
    const auto at = static_cast<std::size_t>(row);
    for (const Take& take : takes_)
        if (at < shown_.size() && take.group == shown_[at].group)
            take.button->setFocus(Qt::OtherFocusReason);
}

void RenewView::take(RenewalGroup group) {
    const auto* starter = starterHere();
    const bool any = std::any_of(shown_.begin(), shown_.end(),
                                 [&](const Difference& each) { return each.group == group; });
    if (starter == nullptr || !any || workbench().readOnly())
        return;
    workbench().perform([machine = *machineShown(workbench()), schedule = scheduleOf(*starter),
                         group](const verbs::VerbContext& context) {
        return verbs::renewSchedule(context, machine, schedule, group);
    });
    firstFocus()->setFocus(Qt::OtherFocusReason);
}

}  // namespace wm::ui
