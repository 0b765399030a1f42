// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

class QAction;
class QLabel;
class QPushButton;
class QVBoxLayout;

namespace wm::ui {

/// What is seen while there is no file, or a file without a machine: one sentence and the first step.
class StartPage : public QWidget {
    Q_OBJECT

  public:
    /// `withoutFile` are the first steps when there is no file, `withFile` when it holds no machine yet.
    StartPage(const std::vector<QAction*>& withoutFile, const std::vector<QAction*>& withFile,
              QWidget* parent = nullptr);
    void refresh(bool hasFile, const QStringList& recent);

  signals:
    void fileAsked(const QString& path);

  private:
    QLabel* title_;
    QLabel* sentence_;
    std::vector<QPushButton*> fileButtons_;
    std::vector<QPushButton*> garageButtons_;
    QLabel* recentTitle_;
    QVBoxLayout* recent_;
};

}  // namespace wm::ui
