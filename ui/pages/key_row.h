// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <functional>
#include <vector>

class QHBoxLayout;
class QWidget;

namespace wm::ui {

/// Something that a key of a list does, and its words with the key behind them: "correct C".
struct KeyAct {
    QString name;  ///< of the button
    QString words;
    std::function<void()> act;
};

/// The same as buttons in a row, for hands on the mouse. They don't take the keys from the list when clicked.
QHBoxLayout* keyRow(QWidget* parent, const std::vector<KeyAct>& acts);

}  // namespace wm::ui
