// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "core/exchange/starter.h"

class QComboBox;
class QLabel;
class QPushButton;

namespace wm::ui {

/// What stands on the page of a machine without tasks: a schedule to begin with.
class ScheduleOffer : public QWidget {
    Q_OBJECT

  public:
    explicit ScheduleOffer(QWidget* parent);
    /// `machine` is its name; without one there is nothing to begin.
    void offerTo(const QString& machine, bool canWrite);

  signals:
    void beginAsked(const exchange::Starter& starter);

  private:
    std::vector<exchange::Starter> starters_;
    QLabel* words_;
    QComboBox* which_;
    QPushButton* begin_;
};

}  // namespace wm::ui
