// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <set>
#include <utility>

#include "core/verbs/adjust_verb.h"
#include "ui/pages/page.h"
#include "ui/tables/table_model.h"

class QLabel;
class QLineEdit;
class QPushButton;

namespace wm::ui {

class RowTable;

/// A schedule made to fit in one go: all intervals scaled, tasks switched off and on, and what on this
/// machine really has to come off first. Nothing is written before Enter, and undo takes all of it back.
class AdjustView : public Page {
    Q_OBJECT

  public:
    AdjustView(const PageTools& tools, QWidget* parent);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;
    [[nodiscard]] QStringList unsaved() const override;

  protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    /// What was begun on one machine. An edge is a step and what it needs.
    using EdgeName = std::pair<StepId, std::string>;
    struct Draft {
        QString percent = QStringLiteral("100");
        std::set<TaskId> turned{};
        std::set<EdgeName> edges{};
        [[nodiscard]] bool isBegun() const;
    };
    void layOut();
    void showRows();
    void addEdges(std::vector<TableRow>& rows);
    void addTasks(std::vector<TableRow>& rows);
    void toggle(std::int64_t id);
    void write();
    void clear();
    [[nodiscard]] Draft& draft() { return drafts_[*machine_]; }
    [[nodiscard]] base::Result<std::int64_t> percent() const;
    [[nodiscard]] verbs::Adjustment adjustment(std::int64_t percent);

    std::map<MachineId, Draft> drafts_;
    std::optional<MachineId> machine_;
    std::vector<EdgeName> edges_;  ///< rows from the top, by ids -1, -2 ...
    QLabel* head_;
    QLineEdit* percent_;
    QLabel* words_;
    RowTable* table_;
    QPushButton* write_;
    QPushButton* clear_;
};

}  // namespace wm::ui
