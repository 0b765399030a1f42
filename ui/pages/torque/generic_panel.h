// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "core/fastening/generic.h"

class QComboBox;
class QLabel;
class QLineEdit;

namespace wm::ui {

/// For a joint on which the manual is silent: why there is no generic figure, or a band in a broken frame
/// with its assumptions and its caution. It never looks like a figure, and nothing of it is saved.
class GenericPanel : public QWidget {
    Q_OBJECT

  public:
    explicit GenericPanel(QWidget* parent);
    /// Hidden for a joint that has its figure.
    void setJoint(const fastening::JointVersion* joint);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    void reckon();

    fastening::GenericAsk ask_;
    QLineEdit* thread_;
    QComboBox* class_;
    QComboBox* hole_;
    QComboBox* lubrication_;
    QWidget* asked_;
    QLabel* title_;
    QLabel* band_;
    QLabel* caution_;
    QLabel* words_;
    bool isBand_ = false;
};

}  // namespace wm::ui
