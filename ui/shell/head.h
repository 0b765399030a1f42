// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractButton>

namespace wm::ui {

/// One head: two lines of text, a figure at the right of the first, a stroke of paint when chosen.
class Head : public QAbstractButton {
    Q_OBJECT

  public:
    explicit Head(QWidget* parent);
    /// `key` chooses it as a click does; may be empty.
    void say(const QString& first, const QString& figure, const QString& second, const QString& key);
    [[nodiscard]] QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    QString first_;
    QString figure_;
    QString second_;
};

}  // namespace wm::ui
