// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <cstdint>
#include <map>
#include <optional>

#include "core/verbs/verbs.h"
#include "ui/pages/tasks/task_draft.h"

namespace wm::ui {

/// What was begun on tasks and not saved, kept by the task. A task that is not in the file yet stands under a
/// number below zero.
class TaskDrafts {
  public:
    struct Begun {
        upkeep::TaskVersion base{};  ///< the version that it began from; without an id for a new task
        TaskDraft draft{};
    };

    /// The number under which a new task begins. `like` gives it its fields.
    std::int64_t addNew(upkeep::TaskVersion like);
    /// Keeps what stands in the fields of a task; forgets it once it says the same as the version.
    void keep(std::int64_t task, const upkeep::TaskVersion& base, TaskDraft draft);
    void drop(std::int64_t task) { begun_.erase(task); }
    void dropAll() { begun_.clear(); }
    [[nodiscard]] const Begun* find(std::int64_t task) const;
    [[nodiscard]] const std::map<std::int64_t, Begun>& all() const { return begun_; }
    [[nodiscard]] QStringList names() const;

  private:
    std::map<std::int64_t, Begun> begun_;
    std::int64_t lastNew_ = 0;
};

/// A task for another machine that begins as `task`: what that machine does not have (access steps, joints,
/// other jobs) is left out. Another machine has another manual: nothing is confirmed, the source says where
/// the interval was taken from, and the limits of measurements are blank.
upkeep::TaskVersion copiedTo(const book::Book& book, upkeep::TaskVersion task, MachineId machine);

}  // namespace wm::ui
