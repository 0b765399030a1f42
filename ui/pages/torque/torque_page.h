// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/fastening/rows.h"
#include "ui/pages/page.h"

class QLabel;
class QLineEdit;
class QPushButton;

namespace wm::ui {

class JointForm;
class RowTable;

/// The figure for a fastener, large, with its condition, order and source; what is hand-tight; and where
/// figures from the manual are typed in.
class TorquePage : public Page {
    Q_OBJECT

  public:
    explicit TorquePage(const PageTools& tools, QWidget* parent);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;
    bool find() override;

  private:
    void layOut();
    void showJoint();
    void mark(fastening::MarkKind kind);

    QLineEdit* find_;
    RowTable* joints_;
    QLabel* empty_;
    QLabel* name_;
    QLabel* figure_;
    QLabel* unit_;
    QLabel* source_;
    QLabel* notes_;
    RowTable* marks_;
    QPushButton* confirm_;
    QPushButton* loosen_;
    JointForm* form_;
};

}  // namespace wm::ui
