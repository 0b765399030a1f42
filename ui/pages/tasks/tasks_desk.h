// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ui/pages/page.h"

namespace wm::ui {

class RenewView;
class Views;

/// The page Tasks: the tasks themselves, and beside them what is known of those that nobody has recorded, a
/// plan for the first hours with them, what a used machine has behind it, the schedule as a whole, and what
/// its starter says by now. The view is kept while other pages are looked at.
class TasksDesk : public Page {
    Q_OBJECT

  public:
    TasksDesk(const PageTools& tools, QWidget* parent);
    void refresh() override;
    void aimAt(const Aim& aim) override;
    [[nodiscard]] QWidget* firstFocus() override;
    bool find() override;
    [[nodiscard]] std::optional<MachineId> machineHere() const override;
    [[nodiscard]] QStringList unsaved() const override;
    void why() override;

  private:
    enum class View : std::uint8_t { Tasks, Baseline, FirstHours, Used, Adjust, Renew };

    void addView(const QString& name, Page* view);
    [[nodiscard]] Page* view() const;
    void nameViews();

    Views* seen_;
    RenewView* renew_;
    std::vector<Page*> views_;
};

}  // namespace wm::ui
