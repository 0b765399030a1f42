// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <vector>

#include "ui/pages/tasks/baseline_rows.h"
#include "ui/tables/row_table.h"

namespace wm::ui {

/// The questions, a line each: several can be marked, one key answers them all.
class BaselineTable : public RowTable {
    Q_OBJECT

  public:
    explicit BaselineTable(QWidget* parent);

    /// Keys are answers; else they only move about.
    void takeAnswers(bool takes) { takesAnswers_ = takes; }
    [[nodiscard]] std::vector<TaskId> markedTasks() const;
    /// Marks each line of which `belongs` holds, and no other.
    void mark(const std::function<bool(TaskId)>& belongs);
    /// To one line alone, whatever was marked and whatever key is held down.
    void moveTo(std::int64_t id);

  signals:
    void answered(wm::ui::Said said);
    void groupAsked();
    void allAsked();

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    bool takeKey(int key, Qt::KeyboardModifiers modifiers);

    bool takesAnswers_ = false;
};

}  // namespace wm::ui
