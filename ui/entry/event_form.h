// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <utility>
#include <vector>

#include "ui/entry/entry_form.h"
#include "ui/workbench/guide.h"

namespace wm::ui {

/// A race or practice day ahead, and which machines go.
class EventForm : public EntryForm {
    Q_OBJECT

  public:
    EventForm(Workbench& workbench, const EntryRequest& request);
    tl::expected<store::Verb, Faults> verb() override;

  private:
    std::optional<outlook::Event> old_;
    QLineEdit* name_;
    QLineEdit* place_;
    QComboBox* kind_;
    QLineEdit* first_;
    QLineEdit* last_;
    std::vector<std::pair<MachineId, QCheckBox*>> goes_;
    QCheckBox* calledOff_ = nullptr;
};

}  // namespace wm::ui
