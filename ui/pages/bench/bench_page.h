// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/pages/page.h"

class QLabel;
class QModelIndex;

namespace wm::ui {

struct BenchCell;
class BenchGrid;
class BenchModel;

/// All machines at one glance: what stands in the way of each next event, and what else is open.
class BenchPage : public Page {
    Q_OBJECT

  public:
    explicit BenchPage(const PageTools& tools, QWidget* parent = nullptr);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;
    [[nodiscard]] std::optional<MachineId> machineHere() const override;
    void why() override;

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    void record(const QModelIndex& index);
    void pick(const QModelIndex& index);
    void putOff(const QModelIndex& index);
    void answer(const BenchCell& cell);
    void fit();

    BenchModel* model_;
    BenchGrid* grid_;
    QWidget* keys_;
};

}  // namespace wm::ui
