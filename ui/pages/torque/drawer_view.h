// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/pages/torque/torque_view.h"

class QPushButton;

namespace wm::fastening {
struct Calibration;
}

namespace wm::ui {

class RowTable;

/// The drawer: torque tools, how they stand, and what a failed check put in doubt.
class DrawerView : public TorqueView {
    Q_OBJECT

  public:
    DrawerView(const PageTools& tools, QWidget* parent);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;

  private:
    void layOut();
    void change();
    void check();
    void strikeCheck();
    void offerStrike();
    [[nodiscard]] const fastening::Calibration* lastCheck() const;
    void foundFine();
    void tightened();
    void showRecalls();

    QLabel* empty_;
    RowTable* tools_;
    QPushButton* add_;
    QPushButton* change_;
    QPushButton* check_;
    QPushButton* strike_;
    QLabel* standard_;  ///< what of it is from memory of the standard
    QLabel* recallWords_;
    RowTable* recall_;
    QPushButton* fine_;
    QPushButton* tight_;
};

}  // namespace wm::ui
