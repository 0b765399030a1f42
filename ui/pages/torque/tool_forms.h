// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/fastening/tool_rows.h"
#include "ui/entry/entry_form.h"

namespace wm::ui {

/// A torque tool of the drawer: a new one, or what its card should say.
class ToolForm : public EntryForm {
    Q_OBJECT

  public:
    ToolForm(Workbench& workbench, const fastening::Tool* tool);
    tl::expected<store::Verb, Faults> verb() override;

  private:
    void fill();

    fastening::Tool tool_;
    QLineEdit* name_;
    QLineEdit* low_;
    QLineEdit* high_;
    QComboBox* unit_;
    QLineEdit* step_;
    QLineEdit* drive_;
    QComboBox* type_;
    QLineEdit* length_;
    QLineEdit* months_;
    QLineEdit* cycles_;
    QCheckBox* away_;
    QLineEdit* note_;
};

/// How a tool was found when it was checked. Found out of tolerance, it brings a recall.
class CalibrationForm : public EntryForm {
    Q_OBJECT

  public:
    CalibrationForm(Workbench& workbench, const fastening::Tool& tool);
    tl::expected<store::Verb, Faults> verb() override;

  private:
    ToolId tool_;
    QLineEdit* date_;
    QComboBox* found_;
    QLineEdit* worst_;
    QLineEdit* byWhom_;
    QLineEdit* months_;
    QLineEdit* cycles_;
    QLineEdit* note_;
};

}  // namespace wm::ui
