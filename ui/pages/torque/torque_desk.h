// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ui/pages/page.h"

namespace wm::ui {

class Views;
class HandTightView;
class TorqueView;

/// The page Torque: the figures, and beside them the hand-tight list, the drawer, what came loose, a whole
/// chart to type and the manual to leaf through. The view is kept while other pages are looked at.
class TorqueDesk : public Page {
    Q_OBJECT

  public:
    TorqueDesk(const PageTools& tools, QWidget* parent);
    void refresh() override;
    void aimAt(const Aim& aim) override;
    [[nodiscard]] QWidget* firstFocus() override;
    bool find() override;
    [[nodiscard]] std::optional<MachineId> machineHere() const override;
    [[nodiscard]] QStringList unsaved() const override;
    void why() override;

  private:
    void addView(const QString& name, TorqueView* view);
    [[nodiscard]] TorqueView* view() const;  ///< nullptr while the figures are seen
    void nameViews();

    Views* seen_;
    Page* figures_;
    HandTightView* handTight_;
    std::vector<TorqueView*> views_;
    std::optional<JointId> sought_;  ///< the cursor of the hand-tight list goes there at the next refresh()
};

}  // namespace wm::ui
