// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

class QLabel;
class QLineEdit;

namespace wm::ui {

class Workbench;

/// The next work window in one line, changed in place: day, from, to, pairs of hands. Enter saves; what can't
/// be read is said beside it and stays as typed. Beside it how long an engine takes to be cold after a run.
class WindowLine : public QWidget {
    Q_OBJECT

  public:
    WindowLine(Workbench& workbench, QWidget* parent);
    void refresh();

  private:
    void say(const QString& words);  ///< what is missing or wrong; empty: nothing
    void save();
    void saveCooling();

    Workbench& workbench_;
    QLineEdit* day_;
    QLineEdit* from_;
    QLineEdit* to_;
    QLineEdit* hands_;
    QLineEdit* cold_;
    QLabel* problem_;
    bool dirty_ = false;
};

}  // namespace wm::ui
