// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <vector>

#include "core/store/store.h"

class QLabel;
class QListWidget;
class QPlainTextEdit;
class QPushButton;

namespace wm::ui {

class Prompts;

/// The daily copies of the open file: what going back to each would lose, and restoring one to a new file.
class BackupsDialog : public QDialog {
    Q_OBJECT

  public:
    BackupsDialog(const store::File& file, Prompts& prompts, QWidget* parent = nullptr);

  private:
    void showChosen();
    void restore();

    const store::File& file_;
    Prompts& prompts_;
    std::vector<store::Backup> backups_;
    QListWidget* list_;
    QLabel* summary_;
    QPlainTextEdit* lost_;
    QPushButton* restore_;
};

}  // namespace wm::ui
