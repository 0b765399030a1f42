// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "ui/entry/entry_form.h"
#include "ui/workbench/guide.h"

namespace wm::ui {

/// A reading of the hour meter or the odometer, with what happened to it if it did not simply count on.
class ReadingForm : public EntryForm {
    Q_OBJECT

  public:
    ReadingForm(Workbench& workbench, const EntryRequest& request);
    tl::expected<store::Verb, Faults> verb() override;
    void showFaults(const Faults& faults) override;

  private:
    void follow();
    void fillFrom(ReadingId id);
    template <class Reading, class Words>
    void fill(const Reading& reading, const Words& words);
    template <class Reading, class Parse>
    [[nodiscard]] Reading reading(Answers& read, const std::optional<Reading>& corrected,
                                  const Parse& parse) const;
    [[nodiscard]] bool asksForOther() const;

    QComboBox* machine_;
    QComboBox* meter_;
    QLineEdit* shown_;
    QLineEdit* date_;
    QComboBox* event_;
    QLineEdit* before_;
    QLineEdit* note_;
    QCheckBox* seen_ = nullptr;  ///< once it is asked about: ridden with joints open
    std::optional<usage::HourReading> correctedHours_;
    std::optional<usage::DistanceReading> correctedDistance_;
};

}  // namespace wm::ui
