// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ui/entry/entry_form.h"
#include "ui/workbench/guide.h"

namespace wm::ui {

/// Fits an item from the shelf, or a new one, to a position of a machine or inside another item.
class FitForm : public EntryForm {
    Q_OBJECT

  public:
    FitForm(Workbench& workbench, const EntryRequest& request);
    tl::expected<store::Verb, Faults> verb() override;

  private:
    void followPlace();
    void followItem();
    void sayWhatEnds();
    [[nodiscard]] items::Move moveAsTyped(Answers& read) const;
    [[nodiscard]] items::Item newItem(Answers& read) const;

    QComboBox* machine_;
    QLineEdit* position_;
    QComboBox* item_;
    QLineEdit* date_;
    QComboBox* part_;
    QLineEdit* name_;
    QLineEdit* kind_;
    QComboBox* past_;
    QLineEdit* best_;
    QLineEdit* low_;
    QLineEdit* high_;
    QComboBox* told_;
    QComboBox* with_;  ///< the rest of the set: the other wheel
    QLabel* off_;      ///< what comes off for it
    QLabel* ends_;
    bool toldIsTyped_ = false;
};

/// Takes an item off: to the shelf, to a workshop, or for good.
class TakeOffForm : public EntryForm {
    Q_OBJECT

  public:
    TakeOffForm(Workbench& workbench, const EntryRequest& request);
    tl::expected<store::Verb, Faults> verb() override;

  private:
    void followDestination();

    ItemId item_;
    QComboBox* to_;
    QLineEdit* date_;
    QComboBox* part_;
    QComboBox* told_;
    QLineEdit* note_;
    QLineEdit* back_;
};

/// Puts another item in an item's place, in one go.
class SwapForm : public EntryForm {
    Q_OBJECT

  public:
    SwapForm(Workbench& workbench, const EntryRequest& request);
    tl::expected<store::Verb, Faults> verb() override;

  private:
    void sayWhatEnds();

    ItemId old_;
    QComboBox* item_;
    QComboBox* to_;
    QLineEdit* date_;
    QComboBox* part_;
    QLineEdit* note_;
    QLabel* ends_ = nullptr;
};

}  // namespace wm::ui
