// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

class QLabel;
class QPushButton;

namespace wm::ui {

/// What saving would do to today's list, before it is done, with the keys that save or give up.
class TaskOutcome : public QWidget {
    Q_OBJECT

  public:
    explicit TaskOutcome(QWidget* parent);
    /// Shows that nothing was begun.
    void rest();
    void foretell(const QString& words);
    /// Shows what is in the way of saving.
    void complain(const QString& words);
    void focusSave();

  signals:
    void saveAsked();
    void dropAsked();

  private:
    void say(const QString& words, bool isTrouble, bool canSave);

    QLabel* title_;
    QLabel* words_;
    QPushButton* save_;
    QPushButton* drop_;
};

}  // namespace wm::ui
