// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/pages/page.h"

namespace wm::ui {

class FittedView;
class HistoryView;
class PlacesStrip;
class SeasonStrip;
class WhatIfView;

/// A machine: what is coming (or, turned over, what was fitted when), what is fitted, what was done (or, in
/// its place, what if it were ridden otherwise). Without a chosen machine, all of them.
class MachinePage : public Page {
    Q_OBJECT

  public:
    explicit MachinePage(const PageTools& tools, QWidget* parent = nullptr);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;
    bool find() override;
    [[nodiscard]] std::optional<MachineId> machineHere() const override;
    void why() override;

  protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void turnOver();
    void suppose(bool on);
    void showSeason();
    [[nodiscard]] std::optional<MachineId> supposedMachine() const;

    SeasonStrip* season_;
    PlacesStrip* places_;
    FittedView* fitted_;
    HistoryView* history_;
    WhatIfView* whatIf_;
};

}  // namespace wm::ui
