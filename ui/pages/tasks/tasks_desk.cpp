// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/tasks_desk.h"

#include <QHBoxLayout>
#include <QStackedWidget>
#include <QTabBar>
#include <QVBoxLayout>

#include "core/ledger/unknown.h"
#include "ui/pages/tasks/adjust_view.h"
#include "ui/pages/tasks/baseline_view.h"
#include "ui/pages/tasks/first_hours_view.h"
#include "ui/pages/tasks/tasks_page.h"
#include "ui/pages/tasks/used_view.h"
#include "ui/theme/type.h"
#include "ui/workbench.h"

namespace wm::ui {

TasksDesk::TasksDesk(const PageTools& tools, QWidget* parent)
    : Page(tools, parent), names_(new QTabBar(this)), stack_(new QStackedWidget(this)) {
    names_->setObjectName(QStringLiteral("taskViews"));
    names_->setAccessibleName(tr("What the page Tasks shows"));
    names_->setDrawBase(false);
    names_->setExpanding(false);
    addView(tr("Tasks"), new TasksPage(tools, stack_));
    addView(tr("What is known"), new BaselineView(tools, stack_));
    addView(tr("First 20 hours"), new FirstHoursView(tools, stack_));
    addView(tr("Used machine"), new UsedView(tools, stack_));
    addView(tr("Adjust all"), new AdjustView(tools, stack_));
    auto* head = new QHBoxLayout;
    head->setContentsMargins(kSpaceSection, kSpaceClose, kSpaceSection, 0);
    head->addWidget(names_);
    head->addStretch();
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(0);
    lines->addLayout(head);
    lines->addWidget(stack_, 1);
    connect(names_, &QTabBar::currentChanged, this, [this](int at) {
        stack_->setCurrentIndex(at);
        if (workbench().book())
            refresh();
    });
}

void TasksDesk::addView(const QString& name, Page* view) {
    names_->addTab(name);
    stack_->addWidget(view);
    views_.push_back(view);
}

Page* TasksDesk::view() const {
    return views_.at(static_cast<std::size_t>(stack_->currentIndex()));
}

void TasksDesk::showView(View view) {
    names_->setCurrentIndex(static_cast<int>(view));
}

// What waits behind a view stands on its name.
void TasksDesk::nameViews() {
    const auto book = workbench().book();
    std::size_t unknown = 0;
    for (const items::Machine* machine : book->machines())
        if (!workbench().chosen() || workbench().chosen() == machine->id)
            unknown += ledger::unknownOf(*book, machine->id).size();
    names_->setTabText(
        static_cast<int>(View::Baseline),
        unknown == 0 ? tr("What is known") : tr("What is known (%1 without a record)").arg(unknown));
}

void TasksDesk::refresh() {
    nameViews();
    view()->refresh();
}

QWidget* TasksDesk::firstFocus() {
    return view()->firstFocus();
}

bool TasksDesk::find() {
    showView(View::Tasks);
    return view()->find();
}

std::optional<MachineId> TasksDesk::machineHere() const {
    return view()->machineHere();
}

QStringList TasksDesk::unsaved() const {
    QStringList all;
    for (const Page* each : views_)
        all << each->unsaved();
    return all;
}

void TasksDesk::why() {
    view()->why();
}

}  // namespace wm::ui
