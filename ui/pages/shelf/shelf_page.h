// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/pages/page.h"

class QLabel;
class QLineEdit;

namespace wm::ui {

class RowTable;
class StockLineForm;

/// Parts and fluids on hand, their containers, and what went in and out.
class ShelfPage : public Page {
    Q_OBJECT

  public:
    explicit ShelfPage(const PageTools& tools, QWidget* parent);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;
    bool find() override;

  private:
    void layOut();
    void showLine();

    QLineEdit* find_;
    RowTable* lines_;
    QLabel* title_;
    RowTable* lots_;
    RowTable* moves_;
    StockLineForm* form_;
    QLabel* empty_;
};

}  // namespace wm::ui
