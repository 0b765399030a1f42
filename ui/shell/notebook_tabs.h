// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTabBar>

#include "ui/shell/notebook_lines.h"

namespace wm::ui {

/// The verdicts above the lines, each with its count; one of them is looked at.
class NotebookTabs : public QTabBar {
    Q_OBJECT

  public:
    explicit NotebookTabs(QWidget* parent);
    void show(const NotebookLines& lines);
    /// To the next one that is seen, on either side.
    void goSideways(int by);
    void turnTo(LineFilter filter);

  signals:
    void filterChosen(wm::ui::LineFilter filter);
};

}  // namespace wm::ui
