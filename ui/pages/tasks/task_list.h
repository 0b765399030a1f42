// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <functional>
#include <vector>

#include "ui/pages/tasks/task_draft.h"
#include "ui/pages/tasks/task_fields.h"

class QPushButton;

namespace wm::ui {

class TaskInput;

/// A list within a task, a line of fields for each entry: limits, parts, measurements, access steps ... A
/// line is taken out by its cross and added by the button below.
class TaskList : public QWidget {
    Q_OBJECT

  public:
    using ChoicesOf = std::function<Choices(const std::string& field)>;

    TaskList(ListSpec spec, QWidget* parent);

    [[nodiscard]] const std::string& name() const { return spec_.name; }
    [[nodiscard]] const std::vector<DraftRow>& rows() const { return rows_; }
    /// Does not emit edited(). The fields stay as they are where they show the same already.
    void setRows(const std::vector<DraftRow>& rows);
    void offer(ChoicesOf choices);
    /// The field of a line, or nullptr.
    [[nodiscard]] TaskInput* field(std::size_t row, const std::string& column) const;
    void clearFaults();

  signals:
    void edited();

  private:
    struct Line {
        QWidget* box = nullptr;
        std::vector<TaskInput*> inputs{};
        QWidget* out = nullptr;  ///< its cross
    };
    void addLine();
    void takeOut(std::size_t at);
    void doubtTheFigure(std::size_t row);
    void build();
    Line makeLine(std::size_t at);

    ListSpec spec_;
    ChoicesOf choices_;
    std::vector<DraftRow> rows_;
    std::vector<Line> lines_;
    QLayout* place_;
    QPushButton* add_;
};

}  // namespace wm::ui
