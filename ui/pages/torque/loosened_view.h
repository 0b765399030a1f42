// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/pages/torque/torque_view.h"

class QPushButton;

namespace wm::ui {

class RowTable;

/// What came loose: every joint that was ever re-checked, those that moved most often first, and plainly
/// which of them loosens more often than its kind.
class LoosenedView : public TorqueView {
    Q_OBJECT

  public:
    LoosenedView(const PageTools& tools, QWidget* parent);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;

  private:
    void recheck();

    QLabel* words_;
    RowTable* joints_;
    QPushButton* recheck_;
};

}  // namespace wm::ui
