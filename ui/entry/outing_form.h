// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ui/entry/entry_form.h"
#include "ui/workbench/guide.h"

namespace wm::ui {

/// One day's riding, with its meter, wash and crash. Joints that are hand-tight stand in the row with a tick
/// each: ridden on without an answer, the entry is stopped.
class OutingForm : public EntryForm {
    Q_OBJECT

  public:
    OutingForm(Workbench& workbench, const EntryRequest& request);
    tl::expected<store::Verb, Faults> verb() override;
    void showFaults(const Faults& faults) override;

  private:
    void fill(const usage::Outing& outing);
    [[nodiscard]] base::Result<std::optional<units::Hours>> riddenHours() const;
    void followMachine();
    void followDay();

    QComboBox* machine_;
    QLineEdit* date_;
    QLineEdit* hours_;
    QLineEdit* meter_;
    QComboBox* kind_;
    std::vector<std::pair<usage::Noted, QLineEdit*>> counts_;
    QComboBox* ground_;
    QComboBox* pace_;
    QComboBox* wash_;
    QCheckBox* crash_;
    QLineEdit* rider_;
    QLineEdit* note_;
    QLabel* gaps_ = nullptr;
    QLabel* doubts_ = nullptr;
    QLabel* open_ = nullptr;
    std::vector<std::pair<JointId, QCheckBox*>> tightened_;
    QCheckBox* seen_ = nullptr;
    bool kindWasChosen_ = false;
    std::optional<usage::Outing> corrected_;  ///< what this entry takes the place of
};

}  // namespace wm::ui
