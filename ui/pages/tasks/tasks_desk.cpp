// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/tasks_desk.h"

#include <QVBoxLayout>

#include "core/book/unrecorded.h"
#include "ui/pages/tasks/adjust_view.h"
#include "ui/pages/tasks/baseline_view.h"
#include "ui/pages/tasks/first_hours_view.h"
#include "ui/pages/tasks/renew_view.h"
#include "ui/pages/tasks/tasks_page.h"
#include "ui/pages/tasks/used_view.h"
#include "ui/pages/views.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

TasksDesk::TasksDesk(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      seen_(new Views(QStringLiteral("taskViews"), tr("What the page Tasks shows"), this)) {
    addView(tr("Tasks"), new TasksPage(tools, seen_));
    addView(tr("What is known"), new BaselineView(tools, seen_));
    addView(tr("First 20 hours"), new FirstHoursView(tools, seen_));
    addView(tr("Used machine"), new UsedView(tools, seen_));
    addView(tr("Adjust all"), new AdjustView(tools, seen_));
    renew_ = new RenewView(tools, seen_);
    addView(tr("New in the schedule"), renew_);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->addWidget(seen_);
    connect(seen_, &Views::changed, this, [this] {
        if (workbench().book())
            refresh();
    });
    connect(seen_, &Views::keysNeedAPlace, this, [this] { firstFocus()->setFocus(Qt::OtherFocusReason); });
}

void TasksDesk::addView(const QString& name, Page* view) {
    seen_->add(name, view);
    views_.push_back(view);
}

Page* TasksDesk::view() const {
    return views_.at(static_cast<std::size_t>(seen_->shown()));
}

void TasksDesk::aimAt(const Aim& aim) {
    const QSignalBlocker quiet(seen_);
    if (aim.view == Aim::View::Baseline)
        seen_->turnTo(static_cast<int>(View::Baseline));
    if (aim.view == Aim::View::UsedMachine)
        seen_->turnTo(static_cast<int>(View::Used));
}

// What waits behind a view stands on its name.
void TasksDesk::nameViews() {
    const auto book = workbench().book();
    std::size_t unknown = 0;
    for (const items::Machine* machine : book->machines())
        if (!workbench().chosen() || workbench().chosen() == machine->id)
            unknown += book::unknownOf(*book, machine->id).size();
    seen_->rename(
        static_cast<int>(View::Baseline),
        unknown == 0 ? tr("What is known") : tr("What is known (%1 without a record)").arg(unknown));
    const auto waiting = renew_->waiting();
    seen_->rename(static_cast<int>(View::Renew),
                  waiting == 0 ? tr("New in the schedule") : tr("New in the schedule (%1)").arg(waiting));
}

void TasksDesk::refresh() {
    nameViews();
    view()->refresh();
}

QWidget* TasksDesk::firstFocus() {
    return seen_->focusOn(view()->firstFocus());
}

bool TasksDesk::find() {
    seen_->turnTo(static_cast<int>(View::Tasks));
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
