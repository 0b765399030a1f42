// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractButton>

namespace wm::ui {

/// A page's name on the edge: its Alt letter underlined, a stroke of paint over it while its page is seen.
class PageKey : public QAbstractButton {
    Q_OBJECT

  public:
    PageKey(const QString& name, QWidget* parent);
    [[nodiscard]] QSize sizeHint() const override;

  protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
};

}  // namespace wm::ui
