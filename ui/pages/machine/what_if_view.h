// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <memory>
#include <optional>

#include "core/book/book.h"
#include "ui/pages/page.h"

class QComboBox;
class QLabel;
class QLineEdit;

namespace wm::ui {

class RowTable;

/// Another season than the one that is likely, beside it: ridden more, on another ground, with one race more.
/// Nothing is stored.
class WhatIfView : public QWidget {
    Q_OBJECT

  public:
    explicit WhatIfView(const PageTools& tools, QWidget* parent = nullptr);
    /// Works it out again, about this machine.
    void refresh(std::optional<MachineId> machine);
    /// The book as it would be; nullptr while nothing is supposed.
    [[nodiscard]] const book::Book* supposed() const { return supposed_.get(); }
    [[nodiscard]] QWidget* firstFocus() const;

  signals:
    void supposedChanged();
    void left();

  protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void workOut();
    [[nodiscard]] outlook::Supposing what();
    void showBeside(const book::Book& now, const book::Book& then);

    PageTools tools_;
    std::optional<MachineId> machine_;
    std::unique_ptr<const book::Book> supposed_;
    QComboBox* often_;
    QComboBox* ground_;
    QLineEdit* day_;
    QLabel* fault_;
    QLabel* asItIs_;
    QLabel* ifSo_;
    QLabel* nothing_;
    RowTable* rows_;
};

}  // namespace wm::ui
