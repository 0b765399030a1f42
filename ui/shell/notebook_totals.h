// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "ui/shell/notebook_standing.h"

class QGridLayout;
class QLabel;

namespace wm::ui {

/// What goes in, a line a machine, so that it can be compared with the sums under the notebook's own columns.
class NotebookTotals : public QWidget {
    Q_OBJECT

  public:
    explicit NotebookTotals(QWidget* parent);
    void show(const NotebookStanding& standing);

  private:
    QGridLayout* grid_;
    std::vector<QLabel*> figures_;
};

}  // namespace wm::ui
