// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <map>
#include <vector>

#include "ui/pages/tasks/task_draft.h"
#include "ui/pages/tasks/task_fields.h"

class QBoxLayout;
class QLabel;
class QToolButton;

namespace wm::ui {

class TaskInput;
class TaskList;

/// All fields of one task, in groups: what is changed often stands open, the rest is folded. It knows nothing
/// of saving; Enter in a field asks for it.
class TaskEditor : public QWidget {
    Q_OBJECT

  public:
    explicit TaskEditor(QWidget* parent);

    /// What can be chosen on this machine.
    void offer(const book::Book& book, MachineId machine);
    void show(const TaskDraft& draft);
    /// What was shown, with what was typed since.
    [[nodiscard]] TaskDraft draft() const;
    /// Each fault at its field, in words, its group opened; the keys go to the first. Those that name no
    /// field of this editor come back.
    Faults showFaults(const Faults& faults);
    void clearFaults();
    /// The field, with all that stands in it chosen.
    void goTo(const base::Place& place);
    /// The open groups side by side, or one below the other.
    void setAcross(bool across);

  signals:
    void edited();
    void saveAsked();
    void wentTo(QWidget* field);  ///< the keys were sent to it: it should be in sight

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    struct Group {
        QToolButton* fold = nullptr;  ///< nothing for one that is always open
        QWidget* inside = nullptr;
        QString title{};
        std::vector<std::string> names{};
    };
    QWidget* makeGroup(const GroupSpec& spec);
    void fill(QWidget* inside, const GroupSpec& spec);
    void doubtTheFigure();
    void reportEdit();
    void showFoldCounts();
    [[nodiscard]] TaskInput* inputAt(const base::Place& place) const;
    void open(const base::Place& place);

    TaskDraft shown_;
    QBoxLayout* often_;
    std::map<std::string, TaskInput*> inputs_;
    std::map<std::string, TaskList*> lists_;
    std::vector<Group> groups_;
};

}  // namespace wm::ui
