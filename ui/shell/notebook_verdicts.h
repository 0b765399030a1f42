// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/shell/notebook_standing.h"

class QLabel;
class QPushButton;

namespace wm::ui {

class NotebookLines;
class NotebookTable;
class NotebookTabs;

/// The lines of a notebook under their verdicts, one of them in full, and what can be said of it. What is
/// said goes to the preview and out as agreed().
class NotebookVerdicts : public QWidget {
    Q_OBJECT

  public:
    NotebookVerdicts(NotebookPreview& preview, QWidget* parent);
    /// Every verdict anew: after judging.
    void refresh();
    /// The same lines; what was agreed to has changed.
    void restate(const NotebookStanding& standing);
    /// To the first line that waits for a word.
    void goToOpen();

  signals:
    void agreed();
    void importAsked();

  private:
    QPushButton* key(const QString& words, const char* name);
    void layOut();
    void connectKeys();
    void showLine();
    [[nodiscard]] const notebook::Line* current() const;

    NotebookPreview& preview_;
    NotebookTabs* tabs_;
    NotebookLines* lines_;
    NotebookTable* table_;
    QLabel* detail_;
    QPushButton* cure_;
    QPushButton* kind_;
    QPushButton* all_;
    QPushButton* leaveOut_;
};

}  // namespace wm::ui
