// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>

#include "ui/pages/page.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QTreeView;

namespace wm::ui {

class HistoryModel;

/// The history with its search: words typed in the box narrow the list and the box keeps the keys; Down goes
/// to the list.
class HistoryView : public QWidget {
    Q_OBJECT

  public:
    explicit HistoryView(const PageTools& tools, QWidget* parent = nullptr);
    void refresh();
    void find();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void narrow();
    void open();
    void strike();
    void correct();
    void keepPlace(std::int64_t fact);

    PageTools tools_;
    HistoryModel* model_;
    QLineEdit* search_;
    QComboBox* kinds_;
    QTreeView* list_;
    QLabel* nothing_;
};

}  // namespace wm::ui
