// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/pages/page.h"

namespace wm::ui {

class StepsPage;
class Views;
class WeekendPage;

/// The page Weekend: the next work window with its order, and the access steps that this order is made from.
class WeekendDesk : public Page {
    Q_OBJECT

  public:
    WeekendDesk(const PageTools& tools, QWidget* parent);
    void refresh() override;
    void aimAt(const Aim& aim) override;
    [[nodiscard]] QWidget* firstFocus() override;
    bool find() override;
    [[nodiscard]] QStringList unsaved() const override;

  private:
    enum class View : std::uint8_t { Order, Steps };

    [[nodiscard]] Page* view() const;

    Views* seen_;
    WeekendPage* order_;
    StepsPage* steps_;
};

}  // namespace wm::ui
