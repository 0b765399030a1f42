// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <utility>
#include <vector>

#include "core/base/ids.h"

class QLabel;
class QMenu;
class QPushButton;
class QToolButton;

namespace wm::ui {

/// What stands over the fields of the chosen task: its name, how it stands, and what can be done with it as a
/// whole. Where nobody has recorded the task it offers the three ways to begin its count.
class TaskHead : public QWidget {
    Q_OBJECT

  public:
    struct About {
        QString name{};
        QString state{};  ///< "2.1 h left · last done Sat 2 May"; "not in the file yet"
        bool isNew = false;
        bool inUse = true;
        bool noRecord = false;
        bool lookSettles = false;                             ///< looking at it begins its count
        std::vector<std::pair<MachineId, QString>> others{};  ///< machines that it could be copied to
    };

    explicit TaskHead(QWidget* parent);
    void show(const About& about);

  signals:
    void confirmAsked();
    void switchAsked();
    void copyAsked(wm::MachineId machine);
    void newOnAsked();
    void doneOnAsked();
    void lookedFineAsked();

  private:
    QPushButton* key(const QString& name, const QString& words, const QString& tip);

    QLabel* name_;
    QLabel* state_;
    QPushButton* confirm_;
    QPushButton* switch_;
    QPushButton* copy_;
    QMenu* machines_;
    QWidget* begin_;
    QPushButton* lookedFine_;
};

}  // namespace wm::ui
