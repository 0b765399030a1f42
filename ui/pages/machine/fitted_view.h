// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/pages/page.h"

class QLabel;
class QTreeView;

namespace wm::ui {

struct FittedNode;
class FittedModel;

/// What is fitted, with its keys: fit, take off, swap, where it was, and recording the task that governs.
class FittedView : public QWidget {
    Q_OBJECT

  public:
    explicit FittedView(const PageTools& tools, QWidget* parent = nullptr);
    void refresh();
    void why();
    [[nodiscard]] QWidget* firstFocus() const;
    [[nodiscard]] std::optional<MachineId> machineHere() const;

  signals:
    /// The mechanic asks for the picture of which item was where, when; or wants it away again.
    void placesAsked();
    /// The mechanic asks for "what if"; or wants it away again.
    void whatIfAsked();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void fit();
    void takeOff();
    void swap();
    void record();
    void showState();
    [[nodiscard]] const FittedNode* current() const;

    PageTools tools_;
    FittedModel* model_;
    QTreeView* tree_;
    QLabel* state_;
    QLabel* nothing_;
};

}  // namespace wm::ui
