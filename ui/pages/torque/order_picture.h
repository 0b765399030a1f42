// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/drawing/joint_order.h"

namespace wm::ui {

/// How the order of a joint is drawn; nothing to draw for one that says no order.
JointOrder orderOf(const fastening::JointVersion& joint);

/// The order in which the fasteners of a joint are tightened, drawn. Hidden where there is none.
class OrderPicture : public QWidget {
    Q_OBJECT

  public:
    explicit OrderPicture(QWidget* parent);
    void setJoint(const fastening::JointVersion* joint);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    JointOrder order_;
};

}  // namespace wm::ui
