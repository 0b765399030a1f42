// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>

namespace wm::ui {

/// Whose a key is where the toolkit and the window both want it. Ctrl+Z is a field's while there are typed
/// letters in it to take back, and the file's otherwise: a field of the toolkit keeps it even when it is
/// empty. Escape is an open list's or menu's, and the window's only when none is open: the toolkit shuts a
/// list and then tells the window too.
class OwnKeys : public QObject {
    Q_OBJECT

  public:
    /// Watches all that the application shows.
    explicit OwnKeys(QObject* parent);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
};

}  // namespace wm::ui
