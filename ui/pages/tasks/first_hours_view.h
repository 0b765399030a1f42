// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/pages/page.h"

class QLabel;
class QToolButton;

namespace wm::ui {

class RowTable;

/// The first 20 hours with a machine of unknown history: what to do at once, what its openings give away, and
/// what follows by 5, 10 and 20 h, from the tasks that nobody has recorded.
class FirstHoursView : public Page {
    Q_OBJECT

  public:
    FirstHoursView(const PageTools& tools, QWidget* parent);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;
    void why() override;

  private:
    void record(std::int64_t id);
    void followChosen();

    QLabel* head_;
    RowTable* table_;
    QToolButton* record_ = nullptr;
};

}  // namespace wm::ui
