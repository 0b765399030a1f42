// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>

#include "ui/guide.h"

namespace wm::ui {

/// Says where a figure comes from, beside it, until the next key or click.
class WhyPopup : public QFrame {
    Q_OBJECT

  public:
    WhyPopup(const Why& why, QWidget* parent);
    void showBeside(const QWidget* at);

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
};

}  // namespace wm::ui
