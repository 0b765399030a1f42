// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

class QStackedWidget;
class QTabBar;

namespace wm::ui {

/// Several views that share a page: their names in a line above, one of them seen. Ctrl+PgUp and Ctrl+PgDown
/// turn to the one before and the next.
class Views : public QWidget {
    Q_OBJECT

  public:
    /// `name` of the line of names; `what` it is, for who can't see it.
    Views(const QString& name, const QString& what, QWidget* parent);

    void add(const QString& name, QWidget* view);
    void rename(int at, const QString& name);
    void turnTo(int at);
    [[nodiscard]] int shown() const;
    /// Where the keys go: there, or to the names if that is hidden or takes none.
    [[nodiscard]] QWidget* focusOn(QWidget* wanted) const;

  signals:
    void changed();
    /// The view that had the keys is hidden by one of the keys that turn to the next.
    void keysNeedAPlace();

  private:
    void turnBy(int step);

    QTabBar* names_;
    QStackedWidget* stack_;
};

}  // namespace wm::ui
