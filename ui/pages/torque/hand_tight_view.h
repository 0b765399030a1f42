// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/pages/torque/torque_view.h"

class QPushButton;

namespace wm::ui {

class RowTable;

/// Joints that were loosened, moved or whose mark broke, and that nobody torqued since; with or without a
/// known torque.
class HandTightView : public TorqueView {
    Q_OBJECT

  public:
    HandTightView(const PageTools& tools, QWidget* parent);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;
    void choose(JointId joint);

  private:
    void confirm();

    QLabel* words_;
    RowTable* joints_;
    QPushButton* confirm_;
};

}  // namespace wm::ui
