// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "ui/pages/page.h"
#include "ui/pages/tasks/baseline_answers.h"

class QLabel;
class QLineEdit;
class QPushButton;

namespace wm::ui {

class RowTable;

/// What is known of the tasks of a machine that nobody has recorded: one line a task, one key an answer, the
/// most pressing first. Nothing is written before Enter, then all at once, and undo takes all of it back.
class BaselineView : public Page {
    Q_OBJECT

  public:
    BaselineView(const PageTools& tools, QWidget* parent);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;
    [[nodiscard]] QStringList unsaved() const override;
    void why() override;

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void layOut();
    void connectParts();
    QPushButton* key(const char* name, const QString& words);
    bool tableKey(int key, Qt::KeyboardModifiers modifiers);
    bool whenKey(int key);

    void showRows();
    void showHead(const BaselineAnswers& answers);
    void showWhen();
    [[nodiscard]] const book::DueLine* line(TaskId task) const;
    [[nodiscard]] std::vector<TaskId> chosenTasks() const;
    void unfold();
    void chooseRows(bool wholeGroup);

    void say(Said said);
    void askWhen(Said said);
    void takeWhen();
    void leaveWhen();
    void dropWhen();
    [[nodiscard]] QString whenFault() const;
    void put(Said said, const QString& when);
    void moveTo(std::int64_t id);
    void goOnAfter(TaskId task);
    void write();
    void showFault(TaskId task, base::Error error);
    void clear();

    std::map<MachineId, BaselineAnswers> answers_;  ///< begun and not written
    std::optional<MachineId> machine_;
    std::vector<TaskId> tasks_;  ///< of that machine without a record, ranked
    bool unfolded_ = false;
    Said asked_ = Said::Serviced;  ///< what the field is typed for
    std::vector<TaskId> askedOf_;  ///< and for which tasks; empty while nothing is asked
    QLabel* head_;
    RowTable* table_;
    QLabel* whenLabel_;
    QLineEdit* when_;
    QLabel* words_;
    QPushButton* write_;
    QPushButton* clear_;
    std::vector<QPushButton*> keys_;
};

}  // namespace wm::ui
