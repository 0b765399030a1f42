// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ui/entry/entry_form.h"
#include "ui/entry/starters.h"

namespace wm::ui {

/// A machine, what it had behind it, what its meter shows, and a starter schedule: one user action.
class MachineForm : public EntryForm {
    Q_OBJECT

  public:
    explicit MachineForm(Workbench& workbench);
    tl::expected<store::Verb, Faults> verb() override;

  private:
    void followPast();
    [[nodiscard]] items::Machine machine(Answers& read) const;

    std::vector<exchange::Starter> starters_;
    QLineEdit* name_;
    QLineEdit* maker_;
    QLineEdit* model_;
    QLineEdit* year_;
    QLineEdit* since_;
    QComboBox* past_;
    QLineEdit* best_;
    QLineEdit* low_;
    QLineEdit* high_;
    QLineEdit* meter_;
    QComboBox* counts_;
    QComboBox* starter_;
};

}  // namespace wm::ui
