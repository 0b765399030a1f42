// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/entry/entry_form.h"

namespace wm::ui {

/// What was found or done at one joint: tightened and checked, looked at, moved and how far, its mark broken.
/// The tool is the one used last for it, or the one that serves it best.
class MarkForm : public EntryForm {
    Q_OBJECT

  public:
    MarkForm(Workbench& workbench, JointId joint, fastening::MarkKind first);
    tl::expected<store::Verb, Faults> verb() override;

  private:
    void follow();
    [[nodiscard]] fastening::MarkKind kind() const;
    [[nodiscard]] base::Result<std::optional<ToolId>> toolIn() const;

    JointId joint_;
    QComboBox* what_;
    QLineEdit* tool_;
    QLineEdit* count_;
    QLineEdit* degrees_;
    QCheckBox* again_;
    QLineEdit* by_;
    QLineEdit* date_;
    QLineEdit* note_;
};

}  // namespace wm::ui
