// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>

#include "core/fastening/rows.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;

namespace wm::ui {

class Workbench;

/// The figure of one joint as the manual prints it, typed in one row: value or range, unit, manual, page, and
/// whether it was checked. Enter saves a new wording; the old one stays in the file.
class JointForm : public QWidget {
    Q_OBJECT

  public:
    JointForm(Workbench& workbench, QWidget* parent);
    /// What is being typed stays when the same joint is shown again.
    void setJoint(const fastening::JointVersion* joint);

  private:
    void layOut();
    void save();

    Workbench& workbench_;
    std::optional<fastening::JointVersion> joint_;
    QLineEdit* low_;
    QLineEdit* high_;
    QComboBox* unit_;
    QLineEdit* source_;
    QLineEdit* page_;
    QCheckBox* confirmed_;
    QLabel* problem_;
};

}  // namespace wm::ui
