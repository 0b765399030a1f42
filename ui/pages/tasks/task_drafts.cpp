// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/task_drafts.h"

#include <algorithm>
#include <utility>

#include "ui/words/figures.h"
#include "ui/words/tr.h"

namespace wm::ui {

QStringList namesOf(const TaskDrafts& drafts) {
    return drafts.names([](const QString& name) {
        return ui::tr("task “%1”").arg(name.isEmpty() ? ui::tr("new task") : name);
    });
}

QString asOn(const items::Machine& machine) {
    return ui::tr("as on %1").arg(text(machine.name));
}

upkeep::TaskVersion copiedTo(const book::Book& book, upkeep::TaskVersion task, MachineId machine) {
    const auto hasTask = [&](const std::string& code) {
        const auto tasks = book.tasks(machine);
        return std::any_of(tasks.begin(), tasks.end(),
                           [&](const auto* other) { return other->code == code; });
    };
    if (const auto* from = book.ledger().find<items::Machine>(task.machine))
        task.source = asOn(*from).toStdString();
    task.id = {};
    task.entered = 0;
    task.task = {};
    task.machine = machine;
    task.confirmed = false;
    task.page.clear();
    for (upkeep::MeasurePoint& point : task.measures)
        point = {
            .name = point.name, .unit = point.unit, .job = hasTask(point.job) ? point.job : std::string()};
    for (upkeep::KitLine& line : task.kit) {
        line.source.clear();
        line.page.clear();
        line.confirmed = false;
    }
    std::erase_if(task.steps,
                  [&](const base::Code& step) { return book.step(machine, step.code) == nullptr; });
    std::erase_if(task.joints,
                  [&](const base::Code& joint) { return book.joint(machine, joint.code) == nullptr; });
    std::erase_if(task.triggers, [&](const upkeep::Trigger& trigger) {
        return trigger.happening == upkeep::Happening::Job && !hasTask(trigger.code);
    });
    for (upkeep::FollowUpRule& rule : task.followUps)
        if (!hasTask(rule.code))
            rule.code.clear();
    if (!task.nthOf.empty() && !hasTask(task.nthOf)) {
        task.nthOf.clear();
        task.nth = 0;
    }
    return task;
}

}  // namespace wm::ui
