// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>

#include "core/verbs/verbs.h"
#include "ui/fields/drafts.h"

namespace wm::ui {

using TaskDrafts = Drafts<upkeep::TaskVersion>;

/// For a question before the window closes: task “Fork oil”.
QStringList namesOf(const TaskDrafts& drafts);

/// A task for another machine that begins as `task`: what that machine does not have (access steps, joints,
/// other jobs) is left out. Another machine has another manual: nothing is confirmed, the source says where
/// the interval was taken from, and the limits of measurements are blank.
upkeep::TaskVersion copiedTo(const book::Book& book, upkeep::TaskVersion task, MachineId machine);

}  // namespace wm::ui
