// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/pages/page.h"

class QLabel;
class QPushButton;

namespace wm::ui {

class OpeningView;
class RowTable;
class WindowLine;

/// What wants doing, what comes off for it, and in which order: picking jobs for the next work window.
class WeekendPage : public Page {
    Q_OBJECT

  public:
    explicit WeekendPage(const PageTools& tools, QWidget* parent);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;

  private:
    void layOut();
    void toggle(std::int64_t id);
    void putInOrOut(std::int64_t id);
    void record(std::int64_t id);
    void openStep(std::int64_t row);

    WindowLine* window_;
    QLabel* fit_;
    RowTable* jobs_;
    OpeningView* opening_;
    RowTable* order_;
    QLabel* also_;
    QPushButton* sheet_;
};

}  // namespace wm::ui
