// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDateTime>
#include <QWidget>
#include <vector>

class QAction;
class QLabel;
class QToolButton;

namespace wm::ui {

class Workbench;

/// The last line: what was saved when, what undo would take back and redo say again, and the keys of the
/// quick entry.
class StatusLine : public QWidget {
    Q_OBJECT

  public:
    StatusLine(Workbench& workbench, QAction* undo, QAction* redo, const std::vector<QAction*>& entries,
               QWidget* parent = nullptr);

    void refresh();
    /// Words that stay until something is saved or said; a refusal stands in the colour of a stop.
    void say(const QString& words, bool isRefusal = false);
    void noteSaved(const QString& what, const QDateTime& when);

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    void fit();

    Workbench& workbench_;
    QAction* undo_;
    QAction* redo_;
    QLabel* words_;
    QToolButton* undoButton_;
    QToolButton* redoButton_;
    std::vector<QToolButton*> keys_;
    QString saved_;
};

}  // namespace wm::ui
