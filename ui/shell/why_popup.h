// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>

#include "ui/workbench/guide.h"

class QGridLayout;
class QTreeWidget;

namespace wm::ui {

/// Says where a figure comes from, beside it, until the next key or click. In a derivation the arrows move,
/// open and close; any other key leaves.
class WhyPopup : public QFrame {
    Q_OBJECT

  public:
    WhyPopup(const Why& why, QWidget* parent);
    void showBeside(const QWidget* at);

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void addTree(const Why& why, QGridLayout* grid);
    void fitTree();

    QTreeWidget* tree_ = nullptr;
};

}  // namespace wm::ui
