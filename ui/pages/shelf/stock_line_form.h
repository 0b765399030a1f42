// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>

#include "core/base/ids.h"

class QComboBox;
class QLabel;
class QLineEdit;

namespace wm::ui {

class Workbench;

/// One row under the shelf: what happened to the chosen line ("bought 1000"), or a new line for the shelf.
/// Enter saves; what can't be read is said beside it and stays as typed.
class StockLineForm : public QWidget {
    Q_OBJECT

  public:
    StockLineForm(Workbench& workbench, QWidget* parent);
    void setLine(std::optional<StockLineId> line);
    void startNewLine();

  private:
    void layOut();
    void save();
    void saveNewLine();
    void say(const QString& words);

    Workbench& workbench_;
    std::optional<StockLineId> line_;
    QComboBox* what_;
    QLineEdit* name_;
    QLineEdit* partNumber_;
    QComboBox* unit_;
    QLineEdit* amount_;
    QLineEdit* place_;
    QLabel* words_;
    QLabel* problem_;
};

}  // namespace wm::ui
