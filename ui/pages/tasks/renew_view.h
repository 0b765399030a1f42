// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/definitions/renewal.h"
#include "core/exchange/starter.h"
#include "ui/pages/page.h"

class QLabel;
class QPushButton;
class QShortcut;

namespace wm::ui {

class RowTable;

/// What the schedule of a machine says by now and the machine does not, taken over a group at a time.
class RenewView : public Page {
    Q_OBJECT

  public:
    RenewView(const PageTools& tools, QWidget* parent);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;
    /// How many definitions differ on the machine that is shown.
    [[nodiscard]] std::size_t waiting() const;

  private:
    struct Take {
        definitions::RenewalGroup group;
        QPushButton* button;
        QShortcut* shortcut;
    };
    void addTake(definitions::RenewalGroup group, int key);
    [[nodiscard]] const exchange::Starter* starterHere() const;
    [[nodiscard]] std::vector<definitions::Difference> differencesHere() const;
    void take(definitions::RenewalGroup group);
    void goToKeyOf(std::int64_t row);
    void showHead();
    void showRows();

    std::vector<exchange::Starter> starters_;
    std::vector<definitions::Difference> shown_;  ///< by row, its id from 0
    QLabel* head_;
    RowTable* table_;
    std::vector<Take> takes_;
};

}  // namespace wm::ui
