// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ui/pages/page.h"
#include "ui/pages/tasks/baseline_asking.h"

class QLabel;
class QLineEdit;
class QPushButton;

namespace wm::ui {

class BaselineSince;
class BaselineTable;

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
    bool whenKey(int key);

    void showRows();
    void showHead();
    void showWhen();
    [[nodiscard]] const book::DueLine* line(TaskId task) const;
    [[nodiscard]] QString nameOf(TaskId task) const;
    void unfold();
    void chooseRows(bool wholeGroup);

    void say(Said said);
    bool mayAllBeNew();
    void askWhen();
    void takeWhen();
    void leaveWhen();
    void dropWhen();
    [[nodiscard]] QString whenFault() const;
    void take(const QString& typed);
    void write();
    void showFault(TaskId task, const base::Error& error);
    void clear();

    BaselineAsking asking_;
    QLabel* head_;
    BaselineTable* table_;
    QLabel* whenLabel_;
    QLineEdit* when_;
    BaselineSince* since_;
    QLabel* words_;
    QPushButton* write_;
    QPushButton* clear_;
    std::vector<QPushButton*> keys_;
};

}  // namespace wm::ui
