// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/exchange/starter.h"
#include "ui/pages/page.h"
#include "ui/pages/tasks/task_drafts.h"

class QLabel;
class QLineEdit;
class QPushButton;
class QScrollArea;
class QSplitter;
class QTimer;

namespace wm::ui {

class RowTable;
class ScheduleOffer;
class FieldsEditor;
class Outcome;
class TaskHead;

/// Where tasks are written and changed: the table, and the chosen task in its fields. What a change does to
/// today's list stands below before it is saved; what is not saved stays with its task.
class TasksPage : public Page {
    Q_OBJECT

  public:
    explicit TasksPage(const PageTools& tools, QWidget* parent);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;
    bool find() override;
    void why() override;
    [[nodiscard]] QStringList unsaved() const override { return namesOf(drafts_); }

  protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    void layOut();
    void connectParts();
    void connectKeys();
    void showRows();
    void showTask();
    void showHead();
    [[nodiscard]] const upkeep::TaskVersion* chosenVersion() const;
    [[nodiscard]] const book::DueLine* chosenLine() const;
    void keep(const Draft& draft);
    void foretell();

    bool save();
    void saveAndReturn();
    void dropDraft();
    void addTask();
    void begin(const exchange::Starter& starter);
    void copyTo(MachineId machine);
    void openStep(const QString& code);
    void switchOnOrOff();
    void confirm();
    bool needsPage();
    void goOn(std::optional<std::int64_t> next);
    [[nodiscard]] std::optional<std::int64_t> nextUnconfirmed() const;
    void beginCount(const QString& note);
    void recordLookedFine();

    TaskDrafts drafts_;
    std::optional<std::int64_t> chosen_;  ///< the task whose fields are shown
    QLineEdit* find_;
    QLabel* progress_;
    QPushButton* new_;
    ScheduleOffer* offer_;
    RowTable* table_;
    QSplitter* parts_;
    QWidget* side_;
    TaskHead* head_;
    QScrollArea* scroll_;
    FieldsEditor* editor_;
    Outcome* outcome_;
    QTimer* settle_;  ///< the look ahead waits for a pause in typing
};

}  // namespace wm::ui
