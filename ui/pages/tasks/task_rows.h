// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPalette>
#include <QString>
#include <optional>
#include <vector>

#include "core/book/book.h"
#include "ui/pages/tasks/task_drafts.h"
#include "ui/tables/table_model.h"

namespace wm::ui {

/// "every 15 h or 10 washes, the first at 5 h"; "after each wash"; "at every 2nd ring change".
QString intervalWords(const book::Book& book, const upkeep::TaskVersion& task);

enum TaskColumn { TaskName, TaskMachine, TaskAbout, TaskInterval, TaskLast, TaskDue, TaskClass, TaskSource };
std::vector<QString> taskHeaders();

/// New tasks that were begun, then the tasks in order of the due list, then those that are switched off. What
/// was begun and not saved says so.
std::vector<TableRow> taskRows(const book::Book& book, std::optional<MachineId> machine,
                               const TaskDrafts& drafts, const QPalette& palette);

/// How many of the tasks in use have their figure confirmed against the manual.
struct Confirmed {
    int confirmed = 0;
    int all = 0;
};
Confirmed confirmedOf(const book::Book& book, std::optional<MachineId> machine);

/// The last version of every task of a machine that is switched off, by name.
std::vector<const upkeep::TaskVersion*> switchedOff(const book::Book& book, MachineId machine);

}  // namespace wm::ui
