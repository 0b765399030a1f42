// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <functional>
#include <vector>

#include "core/exchange/starter.h"
#include "ui/shell/notebook_preview.h"
#include "ui/shell/notebook_standing.h"

class QLabel;
class QPushButton;
class QScrollArea;

namespace wm::ui {

class NotebookForm;
class NotebookTotals;
class NotebookVerdicts;
class Workbench;

/// What an import would write, line by line, before anything is written: how the notebook is understood, what
/// each line was judged and why, what it adds up to. Enter writes what was agreed to as one step; while
/// doubtful lines have no answer it leads to the first of them, and only the next Enter leaves them out. The
/// first Escape says which answers would be lost.
class NotebookDialog : public QDialog {
    Q_OBJECT

  public:
    /// `preview` has been opened and judged; `name` is the file's.
    NotebookDialog(Workbench& workbench, std::unique_ptr<NotebookPreview> preview, QString name,
                   QWidget* parent = nullptr);
    void reject() override;

  signals:
    /// What went in, in words.
    void imported(const QString& words);

  protected:
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void layOut();
    void fitForm();
    void connectForm();
    /// Says something about how the notebook is read, and judges it again.
    void change(const std::function<void()>& say);
    void judgeAgain();
    void refresh();
    void agreed();
    void showWords();
    void showImport();
    void enter();
    void askAboutOpen();
    void ask(const QString& words);
    void importAgreed();
    void bookChanged();

    Workbench& workbench_;
    std::unique_ptr<NotebookPreview> preview_;
    QString name_;
    QScrollArea* form_;
    std::vector<exchange::Starter> starters_;
    NotebookForm* ways_;
    NotebookVerdicts* verdicts_;
    QLabel* words_;
    NotebookTotals* totals_;
    QPushButton* import_;
    NotebookStanding standing_;
};

}  // namespace wm::ui
